"""Opens the maps of a search for sites with xarray and GDAL's command line tools, which know nothing of Headfall.

Usage: python3 read_sites.py SITES

What is expected follows the CF conventions 1.8 (sections 3.1 units, 3.5 flags, 5.6 grid mappings) and the scenario document
of the example: its extent, its reference system EPSG:32743, its bounds and distances. Every miss is said; one is enough for exit
code 1.
"""

import csv
import json
import pathlib
import sys

import numpy as np
import xarray as xr

from expectations import conclude, expect, output

WEST, EAST, SOUTH, NORTH = 400e3, 450e3, 6300e3, 6340e3
LARGEST = 40.0
SITES = 3
# rho g H / efficiency: water of 20 °C, 998.2 kg/m³ (Kell 1975), 9.80665 m/s² (ISO 80000-3), 60 %; in J/m³ for a metre.
JOULES = 998.2 * 9.80665 / 0.6


def check_maps(path):
    with xr.open_dataset(path) as data:
        for name, units in (("largest_rate", "L s-1"), ("ruling", "1"), ("lift", "m"), ("energy", "3600 J m-3")):
            expect(data[name].attrs.get("units") == units, f"siting.nc: {name} in {data[name].attrs.get('units')!r}")
            expect(data[name].dims == ("y", "x"), f"siting.nc: {name} on {data[name].dims}")
            expect(data[name].shape == (40, 50), f"siting.nc: {name} of shape {data[name].shape}")
        expect("32743" in data["crs"].attrs.get("crs_wkt", ""), "siting.nc: crs_wkt names no EPSG:32743")
        rate = data["largest_rate"]
        expect(float(rate.min()) == 0 and 0 < float(rate.max()) <= LARGEST, f"siting.nc: rates up to {float(rate.max())}")
        # Within 3 km of the sides, within 500 m of a bore, and in the reserve nothing may be taken.
        expect(float(rate.sel(x=401500, y=6320500)) == 0, "siting.nc: a rate beside the western side")
        expect(float(rate.sel(x=422500, y=6320500)) == 0, "siting.nc: a rate at the first bore of the town")
        expect(float(rate.sel(x=406500, y=6330500)) == 0, "siting.nc: a rate in the reserve")
        meanings = data["ruling"].attrs["flag_meanings"].split()
        expect(len(meanings) == len(data["ruling"].attrs["flag_values"]), "siting.nc: flags without a meaning each")
        decided = meanings[int(data["ruling"].sel(x=406500, y=6330500))]
        expect(decided in ("excluded_area", "distance_to_springs"), f"siting.nc: {decided} decides in the reserve")
        known = np.isfinite(data["lift"].values)
        expect(known.any(), "siting.nc: no lift")
        expected = JOULES / 3600 * data["lift"].values[known]
        expect(np.allclose(data["energy"].values[known], expected, rtol=1e-5), "siting.nc: energy is not rho g H / efficiency")
        return {name: float(data[name].sel(x=430500, y=6315500)) for name in ("largest_rate", "lift", "energy")}


def check_raster(path, value):
    info = json.loads(output("gdalinfo", "-json", str(path)))
    expect("32743" in info["coordinateSystem"]["wkt"], f"{path.name}: no EPSG:32743")
    corners = info["cornerCoordinates"]
    expect(corners["upperLeft"] == [WEST, NORTH] and corners["lowerRight"] == [EAST, SOUTH], f"{path.name}: {corners}")
    found = float(output("gdallocationinfo", "-valonly", "-geoloc", str(path), "430500", "6315500"))
    expect(abs(found - value) <= 1e-5 * abs(value), f"{path.name}: {found} where siting.nc has {value}")


def check_sites(folder):
    with open(folder / "sites.csv", encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    expect(len(rows) == SITES, f"sites.csv: {len(rows)} sites")
    text = output("ogrinfo", "-al", "-so", str(folder / "sites.geojson"))
    expect(f"Feature Count: {SITES}" in text and "Geometry: Point" in text, "sites.geojson: not the points of the sites")
    for row in rows:
        level, simulated = (float(row[f"lowest level {part} (m above datum)"]) for part in ("in the bore", "by the simulator"))
        expect(abs(level - simulated) < 1, f"sites.csv: level {level} beside {simulated}")


def main():
    folder = pathlib.Path(sys.argv[1])
    values = check_maps(folder / "siting.nc")
    for name, variable in (("largest-rate", "largest_rate"), ("lift", "lift"), ("energy", "energy")):
        check_raster(folder / f"{name}.tif", values[variable])
    check_sites(folder)
    conclude("siting.nc, 3 rasters, sites.csv, sites.geojson")


main()
