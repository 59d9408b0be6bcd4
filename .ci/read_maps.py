"""Opens the maps of a run with GDAL's command line tools, which know nothing of Headfall.

Usage: python3 read_maps.py RESULTS

What is expected is the extent and the coordinate reference system of the example's scenario document (EPSG:32743, that
is WGS 84 / UTM zone 43 south) and its report dates. Every miss is said; one is enough for exit code 1.
"""

import json
import pathlib
import re
import subprocess
import sys

from expectations import conclude, expect, output

WEST, EAST, SOUTH, NORTH = 420e3, 572e3, 6330e3, 6442e3
DATES = ("2027-07-01", "2031-07-01", "2036-07-01", "2046-07-01", "2076-07-01")


def gdalinfo(dataset, *options):
    return json.loads(output("gdalinfo", "-json", *options, dataset))


def expect_utm(name, wkt):
    expect("UTM zone 43S" in wkt and '32743' in wkt, f"{name}: the coordinate reference system is {wkt[:120]!r}")


def check_heads(path):
    """Cells are uneven, so that GDAL gives no geotransform; name, size, reference and missing value must be right."""
    info = gdalinfo(f'NETCDF:"{path}":hydraulic_head')
    expect_utm("heads.nc", info["coordinateSystem"]["wkt"])
    expect(len(info["bands"]) == 51, f"heads.nc: {len(info['bands'])} bands, expected 51")
    band = info["bands"][-1]
    expect(band["type"] == "Float32" and band["unit"] == "m", f"heads.nc: {band['type']} in {band['unit']!r}")
    expect(abs(band["noDataValue"] - 9.96921e36) < 1e31, f"heads.nc: missing value {band['noDataValue']}")
    expect(info["size"][0] * info["size"][1] >= 150_000, f"heads.nc: size {info['size']}")


def check_raster(path, lowest, highest):
    info = gdalinfo(str(path), "-stats", "--config", "GDAL_PAM_ENABLED", "NO")
    expect_utm(path.name, info["coordinateSystem"]["wkt"])
    corners = info["cornerCoordinates"]
    for corner, x, y in (("upperLeft", WEST, NORTH), ("lowerRight", EAST, SOUTH)):
        # The last pixel may reach over the edge of the grid by less than a pixel.
        pixel = info["geoTransform"][1]
        found = corners[corner]
        expect(abs(found[0] - x) < pixel and abs(found[1] - y) < pixel, f"{path.name}: {corner} at {found}")
    expect(info["geoTransform"][1] == -info["geoTransform"][5], f"{path.name}: pixels are not square")
    band = info["bands"][0]
    expect("noDataValue" in band, f"{path.name}: no value for missing pixels")
    expect(lowest <= band["minimum"] <= band["maximum"] <= highest,
           f"{path.name}: values from {band['minimum']} to {band['maximum']}")


def check_rasters(folder):
    for date in ("2026-07-01", *DATES):
        check_raster(folder / f"head-{date}.tif", 90, 320)
    for date in DATES:
        check_raster(folder / f"drawdown-{date}.tif", -40, 100)
    expect(len(list(folder.glob("*.tif"))) == 2 * len(DATES) + 1, "the rasters are not those of the report dates")


def check_bores(path):
    text = output("ogrinfo", "-al", str(path))
    count = re.search(r"Feature Count: (\d+)", text)
    expect(count and int(count.group(1)) == 25, f"bores.geojson: {count.group(0) if count else 'no features'}")
    expect("Geometry: Point" in text and "WGS 84" in text, "bores.geojson: no points on WGS 84")
    longitudes = [float(x) for x in re.findall(r"POINT \((\S+) ", text)]
    # By GDAL from the same easting and northing; 1e-6 degrees are a tenth of a metre.
    east, north = transform(498200, 6382600)
    place = re.search(r"name \(String\) = Tessaby 1\n.*?POINT \((\S+) (\S+)\)", text, re.DOTALL)
    expect(place and abs(float(place.group(1)) - east) < 1e-6 and abs(float(place.group(2)) - north) < 1e-6,
           f"bores.geojson: Tessaby 1 at {place.groups() if place else None}, GDAL says {east, north}")
    expect(all(74 < x < 76 for x in longitudes), "bores.geojson: a longitude out of the example's range")


def transform(x, y):
    """Longitude and latitude by GDAL."""
    done = subprocess.run(["gdaltransform", "-s_srs", "EPSG:32743", "-t_srs", "OGC:CRS84"], check=True,
                          capture_output=True, text=True, input=f"{x} {y}\n")
    return tuple(float(value) for value in done.stdout.split()[:2])


def main():
    folder = pathlib.Path(sys.argv[1])
    check_heads(folder / "heads.nc")
    check_rasters(folder)
    check_bores(folder / "bores.geojson")
    conclude("heads.nc, 11 rasters, bores.geojson")


main()
