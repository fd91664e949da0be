package wire_test

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/wire"
)

// secondCopy is the table as it was typed a second time, from a data sheet,
// into testdata: what is printed for each size and strand.
func secondCopy(t *testing.T) map[wire.Size]map[wire.Strand]units.Printed {
	t.Helper()
	f, err := os.Open(filepath.Join(unitstest.Root(t), "testdata", "published", "wire_resistance.csv"))
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
	table := map[wire.Size]map[wire.Strand]units.Printed{}
	for _, row := range rows {
		if !strings.HasPrefix(row[0], "IEC-") {
			continue
		}
		name, _, _ := strings.Cut(strings.TrimPrefix(row[2], "size="), ";")
		strand := wire.Stranded
		if strings.Contains(row[2], "flexible") {
			strand = wire.Flexible
		}
		size := wire.MustSize(name)
		if table[size] == nil {
			table[size] = map[wire.Strand]units.Printed{}
		}
		p, err := units.ParsePrinted(strings.TrimPrefix(row[3], "resistance="))
		if err != nil {
			t.Fatal(err)
		}
		table[size][strand] = p
	}
	return table
}

// agrees reports whether the table of the code with one cell replaced is the
// second copy.
func agrees(copied map[wire.Size]map[wire.Strand]units.Printed, replaced int, with units.ResistancePerLength) bool {
	for i, cell := range wire.IECCells() {
		if i == replaced {
			cell.At20 = with
		}
		p, ok := copied[cell.Size][cell.Strand]
		if !ok {
			return false
		}
		if same, err := p.Agrees(cell.At20); err != nil || !same {
			return false
		}
	}
	return true
}

// TestIEC60228GuardsEveryDigit changes each digit of each cell in memory and
// demands that the comparison with the second copy notices.
func TestIEC60228GuardsEveryDigit(t *testing.T) {
	copied := secondCopy(t)
	if !agrees(copied, -1, 0) {
		t.Fatal("the table differs from its second copy")
	}
	changed := 0
	for i, cell := range wire.IECCells() {
		digits := copied[cell.Size][cell.Strand].Digits()
		for at := range len(digits) {
			if digits[at] == '.' {
				continue
			}
			for d := byte('0'); d <= '9'; d++ {
				if d == digits[at] {
					continue
				}
				wrong := digits[:at] + string(d) + digits[at+1:]
				at20, err := units.Parse[units.ResistancePerLength](wrong + " mΩ/m")
				if err != nil {
					t.Fatal(err)
				}
				if changed++; agrees(copied, i, at20) {
					t.Errorf("%v %v: %s mΩ/m instead of %s goes unnoticed", cell.Size, cell.Strand, wrong, digits)
				}
			}
		}
	}
	if want := 30 * 3 * 9; changed < want {
		t.Errorf("changed %d digits, want %d at least", changed, want)
	}
}

// TestIEC60228Falls: a larger conductor has less resistance, in each class, and
// fine strands have more than coarse ones but at 50 mm², as the standard prints.
func TestIEC60228Falls(t *testing.T) {
	last := map[wire.Strand]units.ResistancePerLength{}
	for _, cell := range wire.IECCells() {
		if before, ok := last[cell.Strand]; ok && cell.At20 >= before {
			t.Errorf("%v %v: %v is not below %v of the size before", cell.Size, cell.Strand, cell.At20, before)
		}
		last[cell.Strand] = cell.At20
		if cell.Strand == wire.Flexible {
			coarse := last[wire.Stranded]
			if odd := cell.Size == wire.Metric(50*units.SquareMillimetre); (cell.At20 < coarse) != odd {
				t.Errorf("%v: flexible %v against stranded %v", cell.Size, cell.At20, coarse)
			}
		}
	}
}
