package units_test

import (
	"errors"
	"fmt"
	"time"

	"example.com/drawbar/units"
)

// fridge is what a fridge uses in four hours, from ten in the morning.
func fridge() units.Series[units.Power] {
	return units.Series[units.Power]{
		Start:  time.Date(2025, time.July, 1, 10, 0, 0, 0, time.UTC),
		Step:   time.Hour,
		Values: []units.Power{40 * units.Watt, 60 * units.Watt, 80 * units.Watt, 60 * units.Watt},
	}
}

func ExampleSeries() {
	load := units.Series[units.Power]{
		Start:  time.Date(2025, time.July, 1, 10, 0, 0, 0, time.UTC),
		Step:   time.Hour,
		Values: []units.Power{40 * units.Watt, 60 * units.Watt, 80 * units.Watt, 60 * units.Watt},
	}
	for i, p := range load.Values {
		fmt.Println(load.Time(i).Format("15:04"), p)
	}
	fmt.Println(units.EnergyOf(load), "until", load.End().Format("15:04"))
	// Output:
	// 10:00 40 W
	// 11:00 60 W
	// 12:00 80 W
	// 13:00 60 W
	// 240 Wh until 14:00
}

func ExampleSeries_Time() {
	load := fridge()
	fmt.Println(load.Time(0).Format("15:04"), load.Time(load.Len()).Format("15:04"), load.Time(9).IsZero())
	// Output: 10:00 14:00 true
}

func ExampleSeries_End() {
	fmt.Println(fridge().End().Format("15:04"))
	// Output: 14:00
}

func ExampleSeries_Len() {
	fmt.Println(fridge().Len())
	// Output: 4
}

func ExampleSeries_Index() {
	load := fridge()
	half := load.Start.Add(90 * time.Minute)
	fmt.Println(load.Index(half))
	fmt.Println(load.Index(load.End()))
	// Output:
	// 1 true
	// 0 false
}

func ExampleSeries_At() {
	load := fridge()
	fmt.Println(load.At(load.Start.Add(150 * time.Minute)))
	fmt.Println(load.At(load.Start.Add(-time.Second)))
	// Output:
	// 80 W true
	// 0 W false
}

func ExampleSeries_Check() {
	load := fridge()
	load.Step = 0
	fmt.Println(load.Check("battery.Run", "Load"))
	// Output: battery.Run: Load.Step = 0 s, want > 0 s
}

func ExampleCheckSeries() {
	load := fridge()
	load.Values[2] = -80 * units.Watt
	fmt.Println(units.CheckSeries("battery.Run", "Load", load, units.AtLeast(0*units.Watt)))
	// Output: battery.Run: Load.Values[2] = -80 W, want >= 0 W
}

func ExampleSeries_Shape() {
	fmt.Println(fridge().Shape())
	// Output: 4 × 1h0m0s from 2025-07-01T10:00:00Z
}

func ExampleShape() {
	load, solar := fridge().Shape(), fridge().Shape()
	solar.Len = 24
	fmt.Println(load.Equal(solar))
	// Output: false
}

func ExampleShape_Equal() {
	here := fridge().Shape()
	there := here
	there.Start = here.Start.In(time.FixedZone("MDT", -6*60*60)) // 04:00 there
	fmt.Println(here.Equal(there))
	// Output: true
}

func ExampleShape_Check() {
	load, solar := fridge(), fridge()
	solar.Values = solar.Values[:3]
	fmt.Println(load.Shape().Check("battery.Run", "Charge", solar.Shape()))
	// Output:
	// battery.Run: Charge = 3 × 1h0m0s from 2025-07-01T10:00:00Z, want 4 × 1h0m0s from 2025-07-01T10:00:00Z
}

func ExampleShapeError() {
	load, other := fridge(), fridge()
	other.Step = 30 * time.Minute
	err := units.AddTo(load, load, other)
	var shape *units.ShapeError
	if errors.As(err, &shape) {
		fmt.Println(shape.Field, "has steps of", shape.Value.Step, "and not of", shape.Want.Step)
	}
	fmt.Println(errors.Is(err, units.ErrShape))
	// Output:
	// b has steps of 30m0s and not of 1h0m0s
	// true
}

func ExampleSeries_Span() {
	fmt.Println(fridge().Span())
	// Output: 2025-07-01T10:00:00Z to 2025-07-01T14:00:00Z
}

func ExampleSpan() {
	visit := units.Span{
		Start: time.Date(2025, time.July, 1, 0, 0, 0, 0, time.UTC),
		End:   time.Date(2025, time.July, 8, 0, 0, 0, 0, time.UTC),
	}
	fmt.Println(visit.Covers(fridge().Span()))
	// Output: true
}

func ExampleSpan_Covers() {
	span := fridge().Span()
	later := units.Span{Start: span.Start, End: span.End.Add(time.Minute)}
	fmt.Println(later.Covers(span), span.Covers(later))
	// Output: true false
}

// A weather file whose line 01:00 holds the mean from 00:00 to 01:00.
func ExamplePeriodEnding() {
	firstLine := time.Date(2025, time.July, 1, 1, 0, 0, 0, time.UTC)
	sun := units.PeriodEnding(firstLine, time.Hour, []units.Irradiance{0, 20 * units.WattPerSquareMetre})
	fmt.Println(sun.Start.Format("15:04"))
	fmt.Println(sun.At(time.Date(2025, time.July, 1, 1, 30, 0, 0, time.UTC)))
	// Output:
	// 00:00
	// 20 W/m² true
}

func ExampleAddTo() {
	load, fan := fridge(), fridge()
	for i := range fan.Values {
		fan.Values[i] = 20 * units.Watt
	}
	if err := units.AddTo(load, load, fan); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(load.Values)
	// Output: [60 W 80 W 100 W 80 W]
}

func ExampleSubTo() {
	meter := fridge()
	rest := meter
	rest.Values = make([]units.Power, meter.Len())
	if err := units.SubTo(rest, meter, fridge()); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(rest.Values)
	// Output: [0 W 0 W 0 W 0 W]
}

// What the battery gives for the load, the inverter between them at 80 %.
func ExampleScaleTo() {
	load := fridge()
	if err := units.ScaleTo(load, load, 125*units.Percent); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(load.Values)
	// Output: [50 W 75 W 100 W 75 W]
}

func ExampleResampleTo() {
	load := fridge()
	coarse := units.Series[units.Power]{Start: load.Start, Step: 2 * time.Hour, Values: make([]units.Power, 2)}
	if err := units.ResampleTo(coarse, load); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(coarse.Values, units.EnergyOf(coarse) == units.EnergyOf(load))

	// Nothing is made up beyond the end.
	coarse.Start = load.Start.Add(time.Hour)
	fmt.Println(units.ResampleTo(coarse, load))
	// Output:
	// [50 W 70 W] true
	// units.ResampleTo: dst = 2025-07-01T11:00:00Z to 2025-07-01T15:00:00Z, want 2025-07-01T10:00:00Z to 2025-07-01T14:00:00Z
}

func ExampleEnergyOf() {
	fmt.Println(units.EnergyOf(fridge()))
	// Output: 240 Wh
}

func ExampleChargeOf() {
	charger := units.Series[units.Current]{
		Start:  time.Date(2025, time.July, 1, 10, 0, 0, 0, time.UTC),
		Step:   30 * time.Minute,
		Values: []units.Current{40 * units.Ampere, 40 * units.Ampere, 20 * units.Ampere},
	}
	fmt.Println(units.ChargeOf(charger))
	// Output: 50 Ah
}

func ExampleIrradiationOf() {
	sun := units.Series[units.Irradiance]{
		Start:  time.Date(2025, time.July, 1, 11, 0, 0, 0, time.UTC),
		Step:   time.Hour,
		Values: []units.Irradiance{900 * units.WattPerSquareMetre, 1000 * units.WattPerSquareMetre},
	}
	fmt.Println(units.IrradiationOf(sun))
	// Output: 1.9 kWh/m²
}

func ExampleMeanOf() {
	fmt.Println(units.MeanOf(fridge()))
	// Output: 60 W true
}

func ExamplePeakOf() {
	load := fridge()
	peak, i, _ := units.PeakOf(load)
	fmt.Println(peak, "from", load.Time(i).Format("15:04"))
	// Output: 80 W from 12:00
}

func ExampleMinOf() {
	load := fridge()
	low, i, _ := units.MinOf(load)
	fmt.Println(low, "from", load.Time(i).Format("15:04"))
	// Output: 40 W from 10:00
}

// The days around the change of clocks in New York in March 2025.
func ExampleSeries_Days() {
	zone, err := time.LoadLocation("America/New_York")
	if err != nil {
		fmt.Println(err)
		return
	}
	standby := units.Series[units.Power]{
		Start:  time.Date(2025, time.March, 8, 0, 0, 0, 0, zone),
		Step:   time.Hour,
		Values: make([]units.Power, 24+23+24),
	}
	for i := range standby.Values {
		standby.Values[i] = 10 * units.Watt
	}
	for day := range standby.Days() {
		fmt.Println(day.Start.Format(time.DateOnly), day.Len(), "h", units.EnergyOf(day))
	}
	// Output:
	// 2025-03-08 24 h 240 Wh
	// 2025-03-09 23 h 230 Wh
	// 2025-03-10 24 h 240 Wh
}

func ExampleSeries_Months() {
	standby := units.Series[units.Power]{
		Start:  time.Date(2024, time.January, 1, 0, 0, 0, 0, time.UTC),
		Step:   24 * time.Hour,
		Values: make([]units.Power, 31+29+10),
	}
	for i := range standby.Values {
		standby.Values[i] = 10 * units.Watt
	}
	for month := range standby.Months() {
		fmt.Println(month.Start.Format("January"), units.EnergyOf(month))
	}
	// Output:
	// January 7.44 kWh
	// February 6.96 kWh
	// March 2.4 kWh
}
