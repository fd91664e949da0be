package wire_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

// A cell is one number of a table of the code, in the unit that it is printed
// in, with the ID of its second copy in testdata.
type cell struct {
	id    string
	value float64
}

// secondCopy reads what is printed for each ID that matches.
func secondCopy(t *testing.T, file, ids string) map[string]units.Printed {
	t.Helper()
	f, err := os.Open(filepath.Join(unitstest.Root(t), "testdata", "published", file))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	wanted := regexp.MustCompile("^(" + ids + ")-")
	copied := map[string]units.Printed{}
	for _, row := range rows {
		if !wanted.MatchString(row[0]) {
			continue
		}
		_, text, _ := strings.Cut(row[3], "=")
		if copied[row[0]], err = units.ParsePrinted(text); err != nil {
			t.Fatal(err)
		}
	}
	return copied
}

// same reports whether the cells, one of them replaced, are the second copy,
// all of it and nothing else.
func same(cells []cell, copied map[string]units.Printed, replaced int, with float64) bool {
	for i, c := range cells {
		if i == replaced {
			c.value = with
		}
		if p, ok := copied[c.id]; !ok || !p.Covers(c.value) {
			return false
		}
	}
	return len(cells) == len(copied)
}

// guardEveryDigit changes each digit of each cell in memory and demands that
// the comparison with the second copy notices.
func guardEveryDigit(t *testing.T, cells []cell, copied map[string]units.Printed) {
	t.Helper()
	if !same(cells, copied, -1, 0) {
		for _, c := range cells {
			if p := copied[c.id]; !p.Covers(c.value) {
				t.Errorf("%s: the code has %v, the second copy %v", c.id, c.value, p)
			}
		}
		t.Fatalf("%d cells in the code, %d in the second copy", len(cells), len(copied))
	}
	for i, c := range cells {
		digits := copied[c.id].Digits()
		for at := range len(digits) {
			for d := byte('0'); d <= '9'; d++ {
				if digits[at] == '.' || d == digits[at] {
					continue
				}
				wrong := digits[:at] + string(d) + digits[at+1:]
				x, err := strconv.ParseFloat(wrong, 64)
				if err != nil {
					t.Fatal(err)
				}
				if same(cells, copied, i, x) {
					t.Errorf("%s: %s instead of %s goes unnoticed", c.id, wrong, digits)
				}
			}
		}
	}
}

func rowName(s wire.Size) string {
	name, _, _ := strings.Cut(s.String(), " ")
	return strings.Replace(name, "/0", "aught", 1)
}

func TestTablesGuardEveryDigit(t *testing.T) {
	t.Run("ampacity", func(t *testing.T) {
		var cells []cell
		for prefix, rules := range map[string]wire.RuleSet{"N310": wire.NEC2017, "B425": wire.Boat33CFR} {
			for _, size := range wire.Gauges() {
				for n := wire.Insulation60; n <= wire.Insulation200; n++ {
					c, err := wire.Ampacity(wire.Installation{Rules: rules, Size: size, Insulation: n})
					if err != nil || c.Column != n {
						continue // a blank of the table
					}
					cells = append(cells, cell{fmt.Sprintf("%s-%s-%v", prefix, rowName(size), n.Temperature().Celsius()), float64(c.Table)})
				}
			}
		}
		guardEveryDigit(t, cells, secondCopy(t, "wire_ampacity.csv", "N310|B425"))
	})
	t.Run("ambient", func(t *testing.T) {
		var cells []cell
		for top := 10.0; top <= 85; top += 5 {
			for n := wire.Insulation60; n <= wire.Insulation90; n++ {
				if f := wire.AmbientFactor(wire.NEC2017, n, units.Celsius(top)); f > 0 {
					cells = append(cells, cell{fmt.Sprintf("AMB-%v-%v", top, n.Temperature().Celsius()), float64(f)})
				}
			}
		}
		guardEveryDigit(t, cells, secondCopy(t, "wire_ampacity.csv", "AMB"))
	})
	t.Run("device limits", func(t *testing.T) {
		var cells []cell
		for prefix, rules := range map[string]wire.RuleSet{"D240": wire.NEC2017, "RV552": wire.RVLowVoltage} {
			for _, n := range []int{18, 16, 14, 12, 10} {
				p, err := wire.Protect(wire.Circuit{Load: 1 * units.Ampere,
					Installation: wire.Installation{Rules: rules, Size: wire.AWG(n), Insulation: wire.Insulation90}})
				if err != nil {
					t.Fatal(err)
				}
				cells = append(cells, cell{fmt.Sprintf("%s-%d", prefix, n), float64(p.Limit)})
			}
		}
		guardEveryDigit(t, cells, secondCopy(t, "wire_ampacity.csv", "D240|RV552"))
	})
}
