"""Heat sums and 5-day means of a file in the layout of GHCN-Daily by year, as a pandas script would make them.

Usage: heat_sums.py FILE. Prints days, and the sums of degree-days over 50 F, of their running sum over the year, and of the 5-day mean.
"""

import sys

import pandas as pd

names = ["id", "ymd", "el", "v", "mf", "qf", "sf", "ot"]
rows = pd.read_csv(
    sys.argv[1], header=None, names=names, usecols=["id", "ymd", "el", "v", "qf"], dtype={"id": "category", "ymd": "int32", "el": "category", "v": "int32", "qf": "category"}
)
rows = rows[rows["el"].isin(["TMAX", "TMIN"]) & rows["qf"].isna()]
days = rows.pivot_table(index=["id", "ymd"], columns="el", values="v", aggfunc="max", observed=True).dropna().sort_index().reset_index()
days["mean"] = (days["TMAX"] + days["TMIN"]) / 20.0 * 1.8 + 32
days["gdd"] = (days["mean"] - 50).clip(lower=0)
days["cumulated"] = days.groupby(["id", days["ymd"] // 10000], observed=True)["gdd"].cumsum()
days["five_days"] = days.groupby("id", observed=True)["mean"].rolling(5, min_periods=1).mean().reset_index(drop=True)
print(len(days), repr(float(days["gdd"].sum())), repr(float(days["cumulated"].sum())), repr(float(days["five_days"].sum())))
