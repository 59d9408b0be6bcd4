"""Opens the NetCDF files of a run with xarray, which knows nothing of Headfall, and holds them against the scenario.

Usage: python3 read_results.py RESULTS SCENARIO_FOLDER

What is expected follows the CF conventions 1.8 (sections 4 coordinates, 5.6 grid mappings, 7.1 cell boundaries,
9 discrete sampling geometries), ACDD 1.3, and the scenario document of the example. Every miss is said; one is enough
for exit code 1.
"""

import hashlib
import json
import pathlib
import re
import sys

import numpy as np
import xarray as xr

from expectations import conclude, expect


def expect_attributes(name, variable, **expected):
    for attribute, value in expected.items():
        found = {**variable.encoding, **variable.attrs}.get(attribute)
        expect(found == value, f"{name}: {attribute} is {found!r}, expected {value!r}")


def expect_common(name, data, scenario_folder):
    """Global attributes, time and grid mapping, which both files have."""
    for attribute in ("title", "summary", "keywords", "source", "history", "references", "comment", "id",
                      "date_created", "time_coverage_start", "time_coverage_end"):
        expect(data.attrs.get(attribute, "") != "", f"{name}: global attribute {attribute} is missing")
    expect(data.attrs.get("Conventions", "").startswith("CF-1."), f"{name}: Conventions")
    expect(re.fullmatch(r"headfall \d+\.\d+\.\d+.*", data.attrs.get("source", ""), re.IGNORECASE),
           f"{name}: source names no version: {data.attrs.get('source')!r}")
    text = (scenario_folder / "scenario.yaml").read_text(encoding="utf-8")
    expect(data.attrs.get("scenario_document") == text, f"{name}: the scenario document inside differs from the file")
    expect_hashes(name, data, scenario_folder)
    times = data["time"].values
    expect(np.issubdtype(times.dtype, np.datetime64), f"{name}: times do not decode to dates")
    expect(times[0] == np.datetime64("2026-07-01"), f"{name}: first date is {times[0]}")
    expect(times[-1] == np.datetime64("2076-07-01"), f"{name}: last date is {times[-1]}")
    expect(np.all(np.diff(times) > np.timedelta64(0)), f"{name}: times do not increase")
    expect_attributes(f"{name} time", data["time"], standard_name="time", calendar="standard", axis="T",
                      units="days since 2026-07-01 00:00:00")
    expect("crs" in data.coords, f"{name}: the grid mapping is not found through the data")
    expect_attributes(f"{name} crs", data["crs"], grid_mapping_name="transverse_mercator",
                      longitude_of_central_meridian=75.0, latitude_of_projection_origin=0.0,
                      scale_factor_at_central_meridian=0.9996, false_easting=500000.0, false_northing=10000000.0,
                      semi_major_axis=6378137.0)
    expect("32743" in data["crs"].attrs.get("crs_wkt", ""), f"{name}: crs_wkt names no EPSG:32743")


def expect_hashes(name, data, scenario_folder):
    lines = data.attrs.get("input_files_sha256", "").splitlines()
    listed = dict(reversed(line.split("  ", 1)) for line in lines)
    inputs = [path for path in scenario_folder.rglob("*")
              if path.is_file() and path.name != "README.md" and "results" not in path.relative_to(scenario_folder).parts]
    for path in inputs:
        relative = path.relative_to(scenario_folder).as_posix()
        digest = hashlib.sha256(path.read_bytes()).hexdigest()
        expect(listed.get(relative) == digest, f"{name}: SHA-256 of {relative} is {listed.get(relative)}")
    expect(len(listed) == len(inputs), f"{name}: {len(listed)} input files listed, {len(inputs)} are there")


def check_heads(data, scenario_folder):
    expect_common("heads.nc", data, scenario_folder)
    for axis, first, last in (("x", 420e3, 572e3), ("y", 6330e3, 6442e3)):
        centre = data[axis]
        bounds = data[f"{axis}_bnds"].values
        expect_attributes(f"heads.nc {axis}", centre, standard_name=f"projection_{axis}_coordinate", units="m",
                          axis=axis.upper(), bounds=f"{axis}_bnds")
        expect(np.all(np.diff(centre.values) > 0), f"heads.nc: {axis} does not increase")
        expect(bounds[0, 0] == first and bounds[-1, 1] == last, f"heads.nc: extent along {axis}")
        expect(np.all(bounds[1:, 0] == bounds[:-1, 1]), f"heads.nc: cells along {axis} leave gaps")
        expect(np.all((bounds[:, 0] < centre.values) & (centre.values < bounds[:, 1])),
               f"heads.nc: a centre along {axis} lies outside its cell")
    expect(data.sizes["x"] * data.sizes["y"] >= 150_000, "heads.nc: fewer than 150,000 cells")
    expect(data.sizes["time"] == 51, f"heads.nc: {data.sizes['time']} records, expected 51 (yearly)")
    for name in ("hydraulic_head", "drawdown"):
        expect_attributes(f"heads.nc {name}", data[name], units="m", grid_mapping="crs",
                          cell_methods="time: point area: mean")
        expect(data[name].dims == ("time", "y", "x"), f"heads.nc: {name} has dimensions {data[name].dims}")
        # CF's table of standard names has none for head above a datum in a confined aquifer, nor for drawdown.
        expect("standard_name" not in data[name].attrs, f"heads.nc: {name} claims a standard name")
    expect(data["hydraulic_head"].attrs["long_name"] == "hydraulic head above the invented Tessaby levelling datum",
           f"heads.nc: long_name of hydraulic_head is {data['hydraulic_head'].attrs['long_name']!r}")
    for name, units in (("transmissivity", "m2 d-1"), ("storativity", "1"), ("aquifer_top", "m"),
                        ("aquifer_bottom", "m"), ("ground_level", "m"), ("sealing_bed_thickness", "m"),
                        ("sealing_bed_conductivity", "m d-1"), ("sealing_bed_specific_storage", "m-1")):
        expect_attributes(f"heads.nc {name}", data[name], units=units, grid_mapping="crs")
    check_head_values(data)
    check_balance(data)


def check_head_values(data):
    head = data["hydraulic_head"].values
    expect(np.isfinite(head).all(), "heads.nc: a head is missing")
    # Fixed head of the ranges 300 m; lowest level anything is held at 98 m below the lowest pump intake of 111.5 m.
    expect(90 < head.min() and head.max() < 320, f"heads.nc: heads from {head.min()} to {head.max()} m")
    start_less_head = head[0] - head
    expect(np.abs(start_less_head - data["drawdown"].values).max() < 1e-4, "heads.nc: drawdown is not start less head")
    expect(np.all(data["drawdown"].values[0] == 0), "heads.nc: drawdown at the start is not zero")
    town = data["drawdown"].sel(x=501e3, y=6381e3, method="nearest").values
    expect(5 < town[-1] < 60, f"heads.nc: drawdown in the town's field after 50 years is {town[-1]} m")
    top, bottom = data["aquifer_top"].values, data["aquifer_bottom"].values
    expect(np.all(top > bottom), "heads.nc: aquifer top below its bottom")
    transmissivity = data["transmissivity"].values
    expect(np.all((transmissivity > 1) & (transmissivity < 5000)), "heads.nc: transmissivity out of any range")


def check_balance(data):
    """Volumes of each period: what enters equals what leaves, and the file's own discrepancy is the same sum."""
    inflow = data["balance_inflow"].sum("balance_term").values[1:]
    outflow = data["balance_outflow"].sum("balance_term").values[1:]
    expect(np.all(inflow > 0), "heads.nc: no water enters")
    expect(np.abs(inflow - outflow).max() < 1e-6 * inflow.max(), "heads.nc: the water balance does not close")
    expect(np.nanmax(data["balance_largest_step_discrepancy"].values) < 1e-6,
           "heads.nc: the balance of a step is off by more than 1e-6 of what passed")
    names = [name.decode() if isinstance(name, bytes) else str(name) for name in data["balance_term_name"].values]
    for name in ("Harrow Ranges", "lower basin", "rain on the intake beds", "Tessaby 1", "Pelican Swamp Bore"):
        expect(name in names, f"heads.nc: the water balance has no term {name!r}, only {names}")


def check_bores(data, heads, scenario_folder):
    expect_common("bores.nc", data, scenario_folder)
    expect(data.attrs.get("featureType") == "timeSeries", "bores.nc: featureType is not timeSeries")
    names = data["station_name"]
    expect_attributes("bores.nc station_name", names, cf_role="timeseries_id")
    expect(names.dims == ("station",), f"bores.nc: station_name has dimensions {names.dims}")
    texts = [name.decode() if isinstance(name, bytes) else str(name) for name in names.values]
    expect(len(set(texts)) == len(texts) == 25, f"bores.nc: {len(texts)} stations, expected 21 bores, 3 vents, 1 point")
    for name, standard_name, units in (("x", "projection_x_coordinate", "m"), ("y", "projection_y_coordinate", "m"),
                                       ("lat", "latitude", "degrees_north"), ("lon", "longitude", "degrees_east")):
        expect_attributes(f"bores.nc {name}", data[name], standard_name=standard_name, units=units)
        expect(name in data.coords, f"bores.nc: {name} is no coordinate of the data")
    for name, units in (("hydraulic_head", "m"), ("drawdown", "m"), ("water_level_in_bore", "m"),
                        ("discharge", "m3 d-1"), ("wanted_discharge", "m3 d-1")):
        expect_attributes(f"bores.nc {name}", data[name], units=units, grid_mapping="crs", cell_methods="time: point")
        expect(data[name].dims == ("time", "station"), f"bores.nc: {name} has dimensions {data[name].dims}")
    months = data["time"].dt.day.values
    expect(data.sizes["time"] >= 601 and np.mean(months == 1) > 0.9, "bores.nc: records are not monthly")
    check_station_values(data, texts, heads)


def check_station_values(data, texts, heads):
    def series(variable, name):
        return data[variable].isel(station=texts.index(name))

    capped = series("discharge", "Number Nine Drain Bore")
    expect(capped.sel(time="2030-07-01").item() > 0, "bores.nc: Number Nine Drain Bore does not flow in 2030")
    expect(abs(capped.sel(time="2040-07-01").item()) < 1e-6, "bores.nc: Number Nine Drain Bore flows after its capping")
    head = series("hydraulic_head", "Number Nine Drain Bore")
    expect(head.sel(time="2037-10-01").item() > head.sel(time="2036-10-01").item(),
           "bores.nc: head does not recover where a bore is capped")
    pumped = series("discharge", "Tessaby 2")
    expect(pumped.max().item() > 0, "bores.nc: Tessaby 2 gives nothing")
    level = series("water_level_in_bore", "Tessaby 2")
    difference = (series("hydraulic_head", "Tessaby 2") - level).where(pumped > 1)
    expect(difference.min().item() > 0, "bores.nc: no well loss in a pumped bore")
    spring = series("discharge", "Lantern Springs, pool vent")
    spring_head = series("hydraulic_head", "Lantern Springs, pool vent")
    given = 90 * np.maximum(spring_head - 156.8, 0)
    # A recorded head may be off by the scenario's head tolerance, 1 cm, and the conductance is 90 m2/d.
    expect(np.abs(spring - given).max().item() < 0.9,
           "bores.nc: a spring's discharge is not conductance times head above its outlet (m3/d)")
    grid_head = heads["hydraulic_head"].sel(x=491.5e3, y=6389.6e3, method="nearest").isel(time=-1).item()
    point_head = series("hydraulic_head", "Orrin homestead").isel(time=-1).item()
    expect(abs(grid_head - point_head) < 1.0, "bores.nc: head of a protected point is far from that of its cell")


def check_summary(folder):
    """Prints what the run took; the limit on memory is the one the project promises for its example."""
    figures = json.loads((folder / "summary.json").read_text(encoding="utf-8"))["figures"]
    memory = figures["peakMemory"] / 2**20
    print(f"the run took {figures['secondsInAll']:.1f} s and {memory:.0f} MiB on {figures['processors']} processors")


def main():
    folder, scenario_folder = (pathlib.Path(argument) for argument in sys.argv[1:3])
    with xr.open_dataset(folder / "heads.nc", decode_coords="all") as heads, \
            xr.open_dataset(folder / "bores.nc", decode_coords="all") as bores:
        print(heads)
        print(bores)
        check_heads(heads, scenario_folder)
        check_bores(bores, heads, scenario_folder)
    check_summary(folder)
    conclude("heads.nc, bores.nc, summary.json")


main()
