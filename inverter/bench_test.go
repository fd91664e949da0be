package inverter_test

import (
	"testing"

	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

func TestNoAllocations(t *testing.T) {
	for name, call := range map[string]func() error{
		"BatterySide":     func() error { _, err := inverter.BatterySide(dcSide()); return err },
		"EnergyADay":      func() error { _, err := inverter.EnergyADay(day()); return err },
		"CarryTime":       func() error { _, err := inverter.CarryTime(carry()); return err },
		"ChargerDraw":     func() error { _, err := inverter.ChargerDraw(charger()); return err },
		"Starting":        func() error { _, err := inverter.Starting(motor()); return err },
		"ParallelNeutral": func() error { _, err := inverter.ParallelNeutral(neutralReturn()); return err },
		"FaultToFrame":    func() error { _, err := inverter.FaultToFrame(frameFault()); return err },
		"CarbonMonoxide":  func() error { _, err := inverter.CarbonMonoxide(inverter.Engine{Name: "generator"}); return err },
		"PassThrough":     func() error { _, err := inverter.PassThrough(passage()); return err },
	} {
		if err := call(); err != nil {
			t.Fatal(err)
		}
		if n := testing.AllocsPerRun(100, func() { _ = call() }); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}

// A result that keeps a list has one of its own, and allocates nothing else.
func TestOneAllocationForTheList(t *testing.T) {
	demands := []inverter.Demand{microwave(), logger(), laptops(), airConditioner()}
	for name, call := range map[string]func() error{
		"Check": func() error { _, err := inverter.Check(demoMachine(), demands); return err },
		"Sets":  func() error { _, err := inverter.Sets(demoMachine().Limit(), demands[1:3]); return err },
	} {
		if err := call(); err != nil {
			t.Fatal(err)
		}
		if n := testing.AllocsPerRun(100, func() { _ = call() }); n != 1 {
			t.Errorf("%s allocates %v times, want 1", name, n)
		}
	}
	h := must[inverter.Headroom](t)(inverter.Check(demoMachine(), demands))
	o := must[inverter.Overload](t)(inverter.Sets(service30(), demands))
	r := must[inverter.Runnable](t)(inverter.CanRun(service30(), demands))
	demands[0].Name = "spoilt"
	if h.Demands[0].Name != "microwave" || o.Demands[0].Name != "microwave" || r.Demands[0].Name != "microwave" {
		t.Error("a result changes with the caller's list")
	}
}

// plainHeadroom is the arithmetic of Check without types, checks or a result
// to keep.
func plainHeadroom(watts, va, surge float64, powers, factors, starts []float64) (left, leftVA, leftSurge float64) {
	var p, s, most float64
	for i := range powers {
		p += powers[i]
		s += powers[i] / factors[i]
	}
	for i := range powers {
		if x := s - powers[i]/factors[i] + starts[i]; starts[i] > 0 && x > most {
			most = x
		}
	}
	return watts - p, va - s, surge - most
}

func TestPlainTwin(t *testing.T) {
	powers, factors, starts := []float64{1450, 9, 80, 400}, []float64{1, 0.6, 0.6, 0.8}, []float64{0, 0, 0, 2100}
	var demands []inverter.Demand
	for i := range powers {
		d := inverter.Demand{Name: "load", Power: units.Power(powers[i]), PowerFactor: units.Some(units.Ratio(factors[i]))}
		if starts[i] > 0 {
			d.Start = units.Some(units.ApparentPower(starts[i]))
		}
		demands = append(demands, d)
	}
	h := must[inverter.Headroom](t)(inverter.Check(demoMachine(), demands))
	left, leftVA, leftSurge := plainHeadroom(1500, 1500, 3000, powers, factors, starts)
	if units.Compare(float64(h.PowerLeft), left) != 0 || units.Compare(float64(h.ApparentLeft), leftVA) != 0 ||
		units.Compare(float64(h.SurgeLeft.Or(0)), leftSurge) != 0 {
		t.Errorf("%+v, the plain loop has %v %v %v", h, left, leftVA, leftSurge)
	}
}

func BenchmarkCheck(b *testing.B) {
	b.Run("calculator", func(b *testing.B) {
		b.ReportAllocs()
		m, demands := demoMachine(), []inverter.Demand{microwave(), logger(), laptops(), airConditioner()}
		for b.Loop() {
			if _, err := inverter.Check(m, demands); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("plain", func(b *testing.B) {
		b.ReportAllocs()
		powers, factors, starts := []float64{1450, 9, 80, 1390}, []float64{1, 0.6, 0.6, 0.95}, []float64{0, 0, 0, 7560}
		for b.Loop() {
			_, _, _ = plainHeadroom(1500, 1500, 3000, powers, factors, starts)
		}
	})
}

func BenchmarkSets(b *testing.B) {
	b.ReportAllocs()
	var demands []inverter.Demand
	for i := range 12 {
		demands = append(demands, inverter.Demand{Name: string(rune('a' + i)), Power: units.Power(200 + 50*i)})
	}
	for b.Loop() {
		if _, err := inverter.Sets(service30(), demands); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCanRun(b *testing.B) {
	b.ReportAllocs()
	var demands []inverter.Demand
	for i := range 12 {
		demands = append(demands, inverter.Demand{Name: string(rune('a' + i)), Power: units.Power(200 + 50*i)})
	}
	for b.Loop() {
		if _, err := inverter.CanRun(service30(), demands); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkFeedLoops(b *testing.B) {
	b.ReportAllocs()
	sources, feeds := demoFeeds("backed panel")
	for b.Loop() {
		if _, err := inverter.FeedLoops(sources, feeds, "bank"); err != nil {
			b.Fatal(err)
		}
	}
}
