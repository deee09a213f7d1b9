"""The same bounds and named sets, asked by the index and by a query in DuckDB, on the same data in the same run.

    pip install duckdb
    python3 crates/selection/benches/side_by_side.py [LISTINGS] [CONDITIONS]

What is compared: for each condition and each listing of the joint's kind that is rated long enough, how many properties have a
bound or a set of named products, without condition or option, that what is known doesn't meet. The answers must be equal,
pair by pair. The query is given its best: typed tables in memory, one query for all conditions, two threads.
"""

import subprocess
import sys
import tempfile
import time
from pathlib import Path

import duckdb

LISTINGS = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
CONDITIONS = int(sys.argv[2]) if len(sys.argv) > 2 else 500

UNMET = """
create or replace table unmet as
with known as (
    select c.condition, c.property, c.number, c.name from facts c
), head as (
    select h.listing, k.condition,
           case when w.number > h.width then 1 else 0 end as unmet_width
    from heads h
    join kinds k on k.kind = h.kind
    join known r on r.condition = k.condition and r.property = 'barrier.rating' and r.number <= h.rating
    join known s on s.condition = k.condition and s.property = 'barrier.smoke_barrier' and s.number = 0
    left join known w on w.condition = k.condition and w.property = 'joint.width'
), failing as (
    select distinct b.point, f.condition, b.property
    from bounds b join known f on f.property = b.property
    where f.number is not null
      and (f.number < b.lo or f.number > b.hi) and (f.number < b.lo2 or f.number > b.hi2)
    union
    select distinct n.point, f.condition, n.property
    from sets n join known f on f.property = n.property
    where f.name is not null and not list_contains(n.names, f.name)
), counted as (
    select condition, listing, count(distinct property) as unmet
    from (
        select h.condition, h.listing, f.property
        from head h
        join asked a on a.listing = h.listing
        join failing f on f.point = a.point and f.condition = h.condition
        union all
        select condition, listing, 'joint.width' from head where unmet_width = 1
    )
    group by all
)
select h.condition, h.listing, coalesce(c.unmet, 0) as unmet
from head h left join counted c using (condition, listing)
"""

BEST_FIVE = """
select condition, listing, unmet
from unmet
qualify row_number() over (partition by condition order by unmet, listing) <= 5
"""


def tables(db, folder):
    """The tables, each distinct bound and set once: the query has the same advantage as the index."""
    read = lambda name: f"read_csv('{folder / name}', header = true)"
    db.execute(f"create table heads as select * from {read('heads.csv')}")
    db.execute(f"create table facts as select * from {read('facts.csv')}")
    db.execute(
        """create table kinds as select condition, case name when 'head-of-wall' then 'HW'
           when 'bottom-of-wall' then 'BW' when 'floor-to-floor' then 'FF' else 'WW' end as kind
           from facts where property = 'joint.kind'"""
    )
    db.execute(
        f"""create table clauses as select listing, clause, property,
            any_value(coalesce(lo, -1e300)) as lo, any_value(coalesce(hi, 1e300)) as hi,
            any_value(coalesce(lo2, -1e300)) as lo2, any_value(coalesce(hi2, 1e300)) as hi2,
            list_sort(list(name) filter (where name is not null)) as names
            from {read('asks.csv')} group by all"""
    )
    db.execute(
        """create table points as select row_number() over () as point, *
           from (select distinct property, lo, hi, lo2, hi2, names from clauses)"""
    )
    db.execute("create table bounds as select * from points where names is null")
    db.execute("create table sets as select * from points where names is not null")
    db.execute(
        """create table asked as select distinct c.listing, p.point from clauses c join points p
           on c.property = p.property and c.lo = p.lo and c.hi = p.hi and c.lo2 = p.lo2 and c.hi2 = p.hi2
           and c.names is not distinct from p.names"""
    )


def main():
    root = Path(__file__).resolve().parents[3]
    with tempfile.TemporaryDirectory() as folder:
        folder = Path(folder)
        command = ["cargo", "run", "--release", "-q", "-p", "everyclause-selection", "--example", "side_by_side"]
        ours = subprocess.run(
            [*command, "--", str(folder), str(LISTINGS), str(CONDITIONS)],
            cwd=root, check=True, capture_output=True, text=True,
        )
        times = {int(line.split()[0]): float(line.split()[1]) for line in ours.stdout.splitlines()}
        db = duckdb.connect()
        db.execute("set threads = 2")
        tables(db, folder)
        best = float("inf")
        for _ in range(3):
            since = time.perf_counter()
            db.execute(UNMET)
            db.execute(BEST_FIVE).fetchall()
            best = min(best, time.perf_counter() - since)
        db.execute(f"create table ours as select * from read_csv('{folder / 'ours.csv'}', header = true)")
        differ = db.execute(
            """select count(*) from ours o full join unmet u
               on o.condition = u.condition and o.listing = u.listing
               where o.unmet is distinct from u.unmet"""
        ).fetchone()[0]
        pairs = db.execute("select count(*) from ours").fetchone()[0]
    print(f"{LISTINGS} listings, {CONDITIONS} conditions, {pairs} pairs of a kind and rating: {differ} differ")
    print(f"the query, two threads, best of three: {best:.3f} s")
    for threads, seconds in times.items():
        print(f"the index, {threads} thread(s), with reasons in words: {seconds:.3f} s, {best / seconds:.1f} times as fast")
    sys.exit(1 if differ else 0)


if __name__ == "__main__":
    main()
