#!/bin/sh
# Writes every series of compute/almanac anew: npm install && sh all.sh
set -e
cd "$(dirname "$0")"
out=../../compute/almanac
node planets.mjs earth   1.5e-7 1e-6 > $out/earth_series.go
node planets.mjs mercury 1e-6 3e-6 > $out/mercury_series.go
node planets.mjs venus   1e-6 3e-6 > $out/venus_series.go
node planets.mjs mars    1e-6 3e-6 > $out/mars_series.go
node planets.mjs jupiter 2e-6 3e-5 > $out/jupiter_series.go
node planets.mjs saturn  2e-6 1e-4 > $out/saturn_series.go
node planets.mjs uranus  2e-6 3e-4 > $out/uranus_series.go
node planets.mjs neptune 2e-6 3e-4 > $out/neptune_series.go
node moon.mjs 0.12 0.15 0.6 > $out/moon_series.go
node pluto.mjs > $out/pluto_series.go
gofmt -w $out
