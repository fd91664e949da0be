package solar_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

// secondTranscription is the table again, typed by its Fahrenheit bands from
// memory: warm end, cold end, factor in hundredths.
var secondTranscription = [][3]int{
	{76, 68, 102}, {67, 59, 104}, {58, 50, 106}, {49, 41, 108}, {40, 32, 110}, {31, 23, 112}, {22, 14, 114},
	{13, 5, 116}, {4, -4, 118}, {-5, -13, 120}, {-14, -22, 121}, {-23, -31, 123}, {-32, -40, 125},
}

// guardColdBands returns what is wrong with a table, by laws and by the
// second transcription.
func guardColdBands(bands []solar.ColdBand) error {
	if len(bands) != len(secondTranscription) {
		return fmt.Errorf("%d bands", len(bands))
	}
	for i, b := range bands {
		second := secondTranscription[i]
		// A band in °F reaches to one degree below the band before it.
		if float64(second[0]) != units.Celsius(b.Warm+1).Fahrenheit()-1 || float64(second[1]) != units.Celsius(b.Cold).Fahrenheit() {
			return fmt.Errorf("band %v to %v °C is not %d to %d °F", b.Warm, b.Cold, second[0], second[1])
		}
		if units.Compare(b.Factor, units.Ratio(second[2])*units.Percent) != 0 {
			return fmt.Errorf("factor %v at %v °C", b.Factor, b.Cold)
		}
		if b.Warm-b.Cold != 4 || i > 0 && (b.Warm != bands[i-1].Cold-1 || b.Factor <= bands[i-1].Factor) {
			return fmt.Errorf("band %v to %v °C does not follow the one before", b.Warm, b.Cold)
		}
		// Crystalline silicon gains about 0.37 % a kelvin.
		if physics := 1 + 0.0037*(25-b.Cold); math.Abs(float64(b.Factor)-physics) > 0.016 {
			return fmt.Errorf("factor %v at %v °C is not that of silicon", b.Factor, b.Cold)
		}
	}
	return nil
}

// TestColdBands: the guard passes the table and finds every change of a digit.
func TestColdBands(t *testing.T) {
	if err := guardColdBands(solar.ColdBands()); err != nil {
		t.Fatal(err)
	}
	for i := range solar.ColdBands() {
		for _, step := range []float64{100, 10, 1} {
			for digit := -9.0; digit <= 9; digit++ {
				for what, spoil := range map[string]func(*solar.ColdBand){
					"factor": func(b *solar.ColdBand) { b.Factor += units.Ratio(digit*step) * units.Percent },
					"warm":   func(b *solar.ColdBand) { b.Warm += digit * step },
					"cold":   func(b *solar.ColdBand) { b.Cold += digit * step },
				} {
					bands := solar.ColdBands()
					spoil(&bands[i])
					if (guardColdBands(bands) == nil) != (digit == 0) {
						t.Errorf("band %d, %s changed by %v: not found", i, what, digit*step)
					}
				}
			}
		}
	}
}

// TestSetRight: the transcription of the table prints 25 °C and 15 °C as the
// warm ends of two bands, where they would overlap the bands above. They are
// one degree below those.
func TestSetRight(t *testing.T) {
	for coldest, want := range map[float64]units.Ratio{25: 1, 24: 1.02, 15: 1.04, 14: 1.06} {
		s := summer()
		s.Coldest = units.Celsius(coldest)
		o, err := solar.ColdVoltage(s)
		if err != nil || o.TableFactor != want {
			t.Errorf("at %v °C: factor %v, %v, want %v", coldest, o.TableFactor, err, want)
		}
	}
}

// TestBetweenBands: the bands are whole degrees; between two of them the
// colder one counts.
func TestBetweenBands(t *testing.T) {
	for _, c := range []struct {
		coldest float64
		want    units.Ratio
	}{
		{25, 1}, {24.9, 1.02}, {24.5, 1.02}, {19.5, 1.04}, {-0.5, 1.12}, {-15, 1.16}, {-15.4, 1.18}, {-16, 1.18},
		{-20 - 1e-13, 1.18}, {-40, 1.25},
	} {
		s := summer()
		s.Coldest = units.Celsius(c.coldest)
		o, err := solar.ColdVoltage(s)
		if err != nil || o.TableFactor != c.want {
			t.Errorf("at %v °C: factor %v, %v, want %v", c.coldest, o.TableFactor, err, c.want)
		}
	}
}

// TestTableIsNamed: the working names the row, and an error how far the table
// goes.
func TestTableIsNamed(t *testing.T) {
	s := summer()
	for coldest, row := range map[float64]string{-22: "-21 °C to -25 °C", 10: "14 °C to 10 °C", -40: "-36 °C to -40 °C", 25: "25 °C and up, no correction"} {
		s.Coldest = units.Celsius(coldest)
		o, err := solar.ColdVoltage(s)
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, st := range o.Working().Steps() {
			found = found || st.Name == "k_table" && st.Lookup.Row == row
		}
		if !found {
			t.Errorf("at %v °C the row is not %q", coldest, row)
		}
	}
	s.Coldest = units.Celsius(-41)
	const want = "solar.ColdVoltage: Coldest = -41 °C, want -40 °C to 25 °C"
	if _, err := solar.ColdVoltage(s); err == nil || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
}

// TestBeyondTheTable: with a coefficient a string may be colder than the
// table, or of other cells.
func TestBeyondTheTable(t *testing.T) {
	for what, spoil := range map[string]func(*solar.ColdString){
		"colder":    func(s *solar.ColdString) { s.Coldest = units.Celsius(-50) },
		"thin film": func(s *solar.ColdString) { s.Panel.Cells = solar.ThinFilm },
	} {
		s := summer()
		s.Panel.VoltageCoefficient = units.Some(-0.3 * units.PercentPerKelvin)
		spoil(&s)
		o, err := solar.ColdVoltage(s)
		if err != nil || o.ByTable.IsSet() || o.TableFactor != 0 || !o.ByCoefficient.IsSet() || o.Governs != solar.ByCoefficient {
			t.Errorf("%s: %+v, %v", what, o, err)
		}
	}
}
