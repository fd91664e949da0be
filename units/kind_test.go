package units_test

import (
	"strings"
	"testing"

	"example.com/drawbar/units"
)

// tables returns the rows of every kind, Temperature's among them.
func tables() map[string][]units.Row {
	tables := map[string][]units.Row{"Temperature": units.Rows(units.Celsius(0))}
	for name, s := range subjects() {
		tables[name] = units.Rows(s.zero)
	}
	return tables
}

// TestSpellings proves that every spelling in the tables means its own unit,
// typed as it stands, joined to the number or apart from it, and in capitals
// where no prefix m or M is lost.
func TestSpellings(t *testing.T) {
	for name, s := range subjects() {
		for _, row := range units.Rows(s.zero) {
			for _, spelling := range append(row.Also, row.Symbol) {
				if spelling == "1" {
					continue // not one to read: see TestParseErrors
				}
				checkSpelling(t, name, s, row, spelling)
			}
		}
	}
}

func checkSpelling(t *testing.T, name string, s subject, row units.Row, spelling string) {
	t.Helper()
	texts := []string{"1 " + spelling, "1 " + strings.ReplaceAll(spelling, " ", ""), "1\u00a0" + spelling}
	if spelling[0] < '0' || '9' < spelling[0] {
		texts = append(texts, "1"+spelling)
	}
	for _, text := range texts {
		if x, err := s.parse(text); x != row.Float || err != nil {
			t.Errorf("Parse[%s](%q) = %v, %v, want %v", name, text, x, err, row.Float)
		}
	}
	if x, symbol, err := units.Measure(s.of(3*row.Float), spelling); symbol != row.Symbol || err != nil || x == 0 {
		t.Errorf("Measure(%s, %q) = %v, %q, %v, want it in %q", name, spelling, x, symbol, err, row.Symbol)
	}
	if spelling[0]|0x20 == 'm' {
		return // see TestPrefixCase
	}
	plain := units.PlainUnit(spelling) // without Greek, whose capitals are others
	for _, text := range []string{"1 " + strings.ToUpper(plain), "1 " + strings.ToLower(plain)} {
		if x, err := s.parse(text); x != row.Float || err != nil {
			t.Errorf("Parse[%s](%q) = %v, %v, want %v", name, text, x, err, row.Float)
		}
	}
}

// TestSpellingsAreDistinct fails when one spelling means two units of a kind,
// exactly or but for letter case and spaces, and when one stands there twice.
func TestSpellingsAreDistinct(t *testing.T) {
	for name, rows := range tables() {
		exact, folded := map[string]string{}, map[string]string{}
		for _, row := range rows {
			for _, spelling := range append([]string{row.Symbol}, row.Also...) {
				plain := units.PlainUnit(spelling)
				if other, ok := exact[plain]; ok {
					t.Errorf("%s: %q is a spelling of %s and of %s", name, spelling, other, row.Symbol)
				}
				exact[plain] = row.Symbol
				fold := strings.ToLower(strings.ReplaceAll(plain, " ", ""))
				if other, ok := folded[fold]; ok && other != row.Symbol {
					t.Errorf("%s: %q is, but for case and spaces, a spelling of %s and of %s", name, spelling, other, row.Symbol)
				}
				folded[fold] = row.Symbol
			}
		}
	}
}

// TestTables checks what the code relies on.
func TestTables(t *testing.T) {
	for name, rows := range tables() {
		if len(rows) == 0 || !rows[0].Shown {
			t.Errorf("%s: the first unit must be shown: it is the unit of zero", name)
		}
		for _, row := range rows {
			if len(row.Symbol) == 0 || !(row.Float > 0) || row.Den == 0 {
				t.Errorf("%s: bad row %+v", name, row)
			}
			const longest = 48
			for _, spelling := range append(row.Also, row.Symbol) {
				if len(spelling) >= longest {
					t.Errorf("%s: the spelling %q is longer than a unit may be", name, spelling)
				}
			}
		}
	}
}

// TestPrefixCase quotes the comment of find: "MW and mW differ by a thousand
// million, so neither is read for the other, but Miles are miles".
func TestPrefixCase(t *testing.T) {
	for _, c := range []struct {
		kind, text string
		want       float64 // 0: refused
	}{
		{"Power", "1 mW", 1e-3},
		{"Power", "1 MW", 0},
		{"Power", "1 Mw", 0},
		{"Power", "1 kw", 1e3},
		{"Power", "1 KW", 1e3},
		{"Energy", "1 MJ", 1e6},
		{"Energy", "1 mJ", 0},
		{"Energy", "1 mj", 0},
		{"Energy", "1 Megajoule", 1e6},
		{"Resistance", "1 mΩ", 1e-3},
		{"Resistance", "1 MΩ", 0},
		{"Resistance", "1 Mohm", 0},
		{"Charge", "1 mAh", 3.6},
		{"Charge", "1 MAh", 0},
		{"Length", "1 Miles", 1609.344},
		{"Length", "1 METRE", 1},
		{"Length", "1 M", 1},
		{"Length", "1 MM", 0},
		{"Speed", "1 MPH", 0.44704},
		{"Elapsed", "1 MIN", 60},
		{"Elapsed", "1 MS", 0},
		{"Area", "1 MCM", float64(units.KilocircularMil)},
		// A capital that a circular mil was once written with is not read:
		// 5 cm is a slip for 5 cm², not 5 circular mils.
		{"Area", "5 cm", 0},
		{"Area", "5 CM", 0},
		{"Frequency", "1 MHz", 0},
		{"Volume", "1 mL", 1e-6},
		{"Volume", "1 ML", 0},
		{"ResistancePerLength", "1 mV/A/m", 1e-3},
		{"ResistancePerLength", "1 MV/A/m", 0},
	} {
		x, err := subjects()[c.kind].parse(c.text)
		if x != c.want || (err == nil) != (c.want != 0) {
			t.Errorf("Parse[%s](%q) = %v, %v, want %v", c.kind, c.text, x, err, c.want)
		}
	}
}
