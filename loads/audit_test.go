package loads_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
)

// TestAllMistakesAreReported puts one after another into a list.
func TestAllMistakesAreReported(t *testing.T) {
	buses := append(demoBuses(), loads.Bus{Name: "dc", Kind: loads.Direct, Voltage: 12}, loads.Bus{Name: "x"})
	list := demoLoads()
	list[0].Duty = units.Some[units.Ratio](89)
	list[2].Count, list[2].Name = 0, ""
	list[5].Bus = "roof"
	list[17].Rating = loads.Rating{}
	ledger, err := loads.Audit(buses, list)
	if ledger.Lines != nil || ledger.Buses != nil || ledger.Loads != nil {
		t.Errorf("a ledger of wrong loads: %+v", ledger)
	}
	type entry struct {
		Entry string
		Index int
		Name  string
		Field string
	}
	var got []entry
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		for _, one := range joined.Unwrap() {
			var e *loads.EntryError
			var r *units.RangeError
			if !errors.As(one, &e) || !errors.As(one, &r) || r.Op != "loads.Audit" {
				t.Errorf("%v is no error of an entry", one)
				continue
			}
			got = append(got, entry{e.Entry, e.Index, e.Name, r.Field})
		}
	}
	want := []entry{
		{"bus", 3, "dc", "Bus.Name"}, {"bus", 4, "x", "Bus.Kind"}, {"bus", 4, "x", "Bus.Voltage"},
		{"load", 0, "lamps", "Duty"}, {"load", 2, "", "Name"}, {"load", 2, "", "Count"},
		{"load", 5, "sample freezer", "Bus"}, {"load", 17, "portable heater", "Rating"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("errors differ (- want):\n%s\n%v", diff, err)
	}
	if text := err.Error(); !strings.Contains(text, `load 5 "sample freezer": loads.Audit: Bus = roof, want one of dc, backed, main, dc, x`) {
		t.Errorf("the errors are reported as\n%s", text)
	}
}

func TestNoBusAtAll(t *testing.T) {
	_, err := loads.Audit(nil, []loads.Load{fridge()})
	wantRangeError(t, err, "loads.Audit", "Bus")
	if ledger, err := loads.Audit(nil, nil); err != nil || len(ledger.Lines) != 0 || len(ledger.Buses) != 0 {
		t.Errorf("nothing comes to %+v, %v", ledger, err)
	}
	if ledger := one(t, battery, fridge()); len(ledger.Buses) != 1 {
		t.Errorf("one bus has %d totals", len(ledger.Buses))
	}
}

func TestTotalsTooLarge(t *testing.T) {
	huge := load("huge", "dc", loads.ConstantPower, 1.5e303*units.Watt, 24*units.Hour)
	ledger, err := loads.Audit([]loads.Bus{battery}, []loads.Load{huge, huge})
	wantRangeError(t, err, "loads.Audit", "Energy")
	var e *loads.EntryError
	if !errors.As(err, &e) || e.Entry != "bus" || e.Name != "dc" || ledger.Buses != nil {
		t.Errorf("a total too large gives %+v, %v", ledger, err)
	}
	huge.Rating.Power = units.Some(units.Power(1e308))
	_, err = loads.Audit([]loads.Bus{battery}, []loads.Load{fridge(), huge})
	if !errors.As(err, &e) || e.Entry != "load" || e.Index != 1 {
		t.Errorf("a line too large gives %v", err)
	}
}

// TestAuditIsItsLines works the totals out again, the slow way.
func TestAuditIsItsLines(t *testing.T) {
	list := demoLoads()
	list[9].Standby, list[14].Standby = 0.4*units.Watt, 2.5*units.Watt
	ledger, err := loads.Audit(demoBuses(), list)
	if err != nil {
		t.Fatal(err)
	}
	for i, bus := range demoBuses() {
		want := loads.Total{Bus: bus}
		for j, l := range list {
			if l.Bus != bus.Name {
				continue
			}
			v := take(t, bus, l)
			if v != ledger.Lines[j] {
				t.Errorf("line %d is %+v, Take has %+v", j, ledger.Lines[j], v)
			}
			want.Lines++
			want.Energy += v.Energy
			want.StandbyEnergy += v.StandbyEnergy
			want.Connected += v.Power
			want.ConnectedApparent += v.Apparent
			want.ConnectedCurrent += v.Current
			want.Longest = max(want.Longest, v.Hours)
			if l.Standby > 0 {
				want.Longest = 24 * units.Hour
			}
			if l.MustNotStop {
				want.MustNotStop.Lines++
				want.MustNotStop.Energy += v.Energy
				want.MustNotStop.Average += v.Average
				want.MustNotStop.Connected += v.Power
			}
		}
		want.Average = want.Energy.In(24 * units.Hour)
		if bus.Kind == loads.Direct {
			want.Charge = units.Some(want.Energy.At(bus.Voltage))
		}
		if diff := cmp.Diff(want, ledger.Buses[i], unitstest.Near(1e-12)); diff != "" {
			t.Errorf("%s differs (- want):\n%s", bus.Name, diff)
		}
	}
	if got, ok := ledger.On("roof"); ok || got != (loads.Total{}) {
		t.Errorf("a bus that is not there has %+v", got)
	}
}

// "The slices of the result are its own."
func TestLedgerKeepsItsInput(t *testing.T) {
	list, buses := demoLoads(), demoBuses()
	ledger, err := loads.Audit(buses, list)
	if err != nil {
		t.Fatal(err)
	}
	list[6].Windows[0] = loads.Window{}
	list[0].Name, buses[0].Name = "changed", "changed"
	if diff := cmp.Diff(demo(t), ledger, unitstest.Near(0)); diff != "" {
		t.Errorf("the ledger changed with its input:\n%s", diff)
	}
}
