package units_test

import (
	"math"
	"strconv"
	"testing"

	"example.com/drawbar/units"
)

// gnuDifference is the relative difference allowed between a factor of ours,
// rounded once, and one of GNU Units, which works in float64 and prints 15
// digits: half a unit of the 15th is 5e-15 at most.
const gnuDifference = 1e-14

// TestGNUUnits compares every unit with the recorded factors of GNU Units,
// an independent table. A row with a wider difference must have a reason and
// need it; a unit that GNU Units lacks is listed with a reason.
func TestGNUUnits(t *testing.T) {
	missing, seen := 0, map[string]bool{}
	for _, r := range records(t, "gnu_units.csv") {
		name := r["kind"] + " " + r["unit"]
		if seen[name] {
			t.Errorf("%s: recorded twice", name)
		}
		seen[name] = true
		row := rowOf(t, r["kind"], r["unit"])
		if r["gnu"] == "" {
			missing++
			if r["why"] == "" {
				t.Errorf("%s: not recorded, and no reason", name)
			}
			continue
		}
		checkGNU(t, name, row.Float, r)
	}
	for kind, s := range subjects() {
		for _, row := range units.Rows(s.zero) {
			if !seen[kind+" "+row.Symbol] {
				t.Errorf("%s %s is not in gnu_units.csv", kind, row.Symbol)
			}
		}
	}
	// GNU Units has no per mille. More would hollow out the comparison.
	if missing != 1 {
		t.Errorf("%d units that GNU Units lacks, want 1", missing)
	}
	t.Logf("%d units compared, %d lacking there", len(seen)-missing, missing)
}

func checkGNU(t *testing.T, name string, ours float64, r map[string]string) {
	t.Helper()
	theirs, err := strconv.ParseFloat(r["factor"], 64)
	if err != nil {
		t.Errorf("%s: %v", name, err)
		return
	}
	off := math.Abs(ours-theirs) / theirs
	if r["within"] == "" {
		if !(off <= gnuDifference) {
			t.Errorf("%s is %v, GNU Units has %v: off by %.2g", name, ours, theirs, off)
		}
		return
	}
	within, err := strconv.ParseFloat(r["within"], 64)
	switch {
	case err != nil || r["why"] == "":
		t.Errorf("%s: a wider difference needs a number and a reason: %q, %q", name, r["within"], r["why"])
	case off <= gnuDifference:
		t.Errorf("%s no longer needs its wider difference", name)
	case !(off <= within):
		t.Errorf("%s is %v, GNU Units has %v: off by %.2g, more than %s", name, ours, theirs, off, r["within"])
	}
}

// TestGNUTemperature compares readings with those that GNU Units recorded.
// It converts by way of kelvins, so 1e-13 K is its noise at 300 K.
func TestGNUTemperature(t *testing.T) {
	const noise = 1e-13
	rows := records(t, "gnu_temperature.csv")
	if len(rows) != 14 {
		t.Errorf("%d rows, want 14", len(rows))
	}
	for _, r := range rows {
		want, err := strconv.ParseFloat(r["celsius"], 64)
		if err != nil {
			t.Fatal(err)
		}
		got, err := units.ParseTemperature(r["text"])
		if err != nil || !(math.Abs(got.Celsius()-want) <= noise) {
			t.Errorf("ParseTemperature(%q) = %v, %v, GNU Units has %v °C", r["text"], got, err, want)
		}
	}
}
