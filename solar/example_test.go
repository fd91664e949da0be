package solar_test

import (
	"errors"
	"fmt"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

// Example 8 of FAO Irrigation and Drainage Paper 56: 20° S on 3 September,
// printed as 0.985, 0.120 rad, 1.527 rad and 32.2 MJ/m². Example 9 has 11.7
// hours of daylight.
func ExampleSunOn() {
	sun, err := solar.SunOn(solar.DayAt{Latitude: -20 * units.Degree, OfYear: 246})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("d_r %.3f, declination %.3f rad, sunset %.3f rad\n", units.In(sun.InverseDistance, units.One),
		units.In(sun.Declination, units.Radian), units.In(sun.SunsetAngle, units.Radian))
	fmt.Printf("%.1f MJ/m², %.1f h\n", units.In(sun.AboveAir, units.MegajoulePerSquareMetre), units.In(sun.Daylight, units.Hour))
	// Output:
	// d_r 0.985, declination 0.120 rad, sunset 1.527 rad
	// 32.2 MJ/m², 11.7 h
}

func ExampleSunOn_error() {
	_, err := solar.SunOn(solar.DayAt{Latitude: 95 * units.Degree, OfYear: 246})
	fmt.Println(err)
	fmt.Println(errors.Is(err, units.ErrRange))
	// Output:
	// solar.SunOn: Latitude = 95°, want -90° to 90°
	// true
}

func ExampleHorizon() {
	for _, month := range []int{1, 91, 172} {
		sun, err := solar.SunOn(solar.DayAt{Latitude: 69.7 * units.Degree, OfYear: month})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(sun.Horizon)
	}
	// Output:
	// never rises
	// rises and sets
	// never sets
}

func ExampleDailyHarvest() {
	harvest, err := solar.DailyHarvest(solar.PanelDay{
		Peak:             440 * units.Watt,
		Irradiation:      3.037 * units.KilowattHourPerSquareMetre,
		PowerCoefficient: units.Some(-0.36 * units.PercentPerKelvin),
		CellTemperature:  units.Celsius(35),
		Losses:           solar.TypicalLosses(),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f of %.0f: cells %.3f, losses %.4f\n", units.In(harvest.Energy, units.WattHour),
		units.In(harvest.Nameplate, units.WattHour), units.In(harvest.TemperatureFactor, units.One), units.In(harvest.Kept, units.One))
	// Output: 1107 of 1336: cells 0.964, losses 0.8592
}

// A coefficient that lost its sign on the way is refused.
func ExampleDailyHarvest_error() {
	_, err := solar.DailyHarvest(solar.PanelDay{
		Peak:             440 * units.Watt,
		Irradiation:      3.037 * units.KilowattHourPerSquareMetre,
		PowerCoefficient: units.Some(0.36 * units.PercentPerKelvin),
	})
	fmt.Println(err)
	// Output: solar.DailyHarvest: PowerCoefficient = 0.36 %/K, want -1 %/K to 0 %/K
}

func ExampleDayHarvest_Findings() {
	harvest, err := solar.DailyHarvest(solar.PanelDay{
		Peak:        100 * units.Watt,
		Irradiation: 2.243 * units.KilowattHourPerSquareMetre,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range harvest.Findings() {
		fmt.Println(f.Severity, f.Rule)
	}
	// Output:
	// caution no-losses
	// note temperature-not-counted
	// note harvest-not-accepted
}

func ExampleNewLosses() {
	losses, err := solar.NewLosses(
		solar.Loss{Name: "shade of the vent", Fraction: 20 * units.Percent},
		solar.Loss{Name: "dirt", Fraction: 10 * units.Percent},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(losses.Kept(), "is kept, not 70 %")
	_, err = solar.NewLosses(solar.Loss{Name: "dirt", Fraction: 300 * units.Percent})
	fmt.Println(err)
	// Output:
	// 72 % is kept, not 70 %
	// solar.NewLosses: losses[0].Fraction (dirt) = 300 %, want 0 % to 100 %
}

// The ten losses of NREL/TP-6A20-62641, printed there as 14.08 % together.
func ExampleTypicalLosses() {
	for i, x := range solar.TypicalLosses().All() {
		fmt.Println(i+1, x.Name, x.Fraction)
	}
	fmt.Printf("%.2f\n", solar.TypicalLosses().Lost())
	// Output:
	// 1 soiling 2 %
	// 2 shading 3 %
	// 3 snow 0 %
	// 4 mismatch 2 %
	// 5 wiring 2 %
	// 6 connections 0.5 %
	// 7 light-induced degradation 1.5 %
	// 8 nameplate rating 1 %
	// 9 age 0 %
	// 10 availability 3 %
	// 14.08 %
}

func ExampleCellTemperature() {
	heat, err := solar.CellTemperature(solar.Exposure{
		Air:        units.Celsius(30),
		Irradiance: 1000 * units.WattPerSquareMetre,
		Nominal:    units.Celsius(47),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(heat.Temperature)
	// Output: 63.75 °C
}

func ExampleColdVoltage() {
	cold, err := solar.ColdVoltage(solar.ColdString{
		Rules:   solar.NEC2017,
		Panel:   solar.Panel{Voc: 46.2 * units.Volt, VoltageCoefficient: units.Some(-0.28 * units.PercentPerKelvin)},
		Series:  2,
		Coldest: units.Celsius(-22),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f at 25 °C, %.1f by the %v, %.1f by the table\n",
		cold.Standard, cold.Voltage, cold.Governs, cold.ByTable.Or(0))
	// Output: 92.4 V at 25 °C, 104.6 V by the maker's coefficient, 110.9 V by the table
}

func ExampleCurrents() {
	currents, err := solar.Currents(solar.Strings{
		Rules: solar.NEC2017,
		Array: solar.Array{
			Panel:  solar.Panel{Isc: 11 * units.Ampere, SeriesFuse: units.Some(20 * units.Ampere)},
			Series: 1, Parallel: 3,
		},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("joint %.2f, string %.2f, fed back %.1f: %v\n",
		currents.Required, currents.StringRequired, currents.Backfeed, currents.Fusing)
	// Output: joint 51.56 A, string 17.19 A, fed back 27.5 A: fuse each string
}

func ExampleFitController() {
	fit, err := solar.FitController(solar.Hookup{
		Rules: solar.NEC2017,
		Array: solar.Array{
			Panel: solar.Panel{
				Power: 220 * units.Watt, Voc: 46.2 * units.Volt, Vmp: 38.4 * units.Volt, Isc: 6.12 * units.Ampere,
				VoltageCoefficient: units.Some(-0.28 * units.PercentPerKelvin),
			},
			Series: 2, Parallel: 1,
		},
		Coldest: units.Celsius(-22),
		Hottest: units.Celsius(70),
		Controller: solar.Controller{
			Kind: solar.MPPT, InputVoltage: 100 * units.Volt, InputCurrent: units.Some(20 * units.Ampere),
			Output: units.Some(30 * units.Ampere),
		},
		Bank: 13.2 * units.Volt,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f offered, %.1f charging, %.1f for the conductor\n", fit.Offered, fit.Charging, fit.OutputRequired)
	for _, f := range fit.Findings() {
		fmt.Println(f.Severity, f.Rule)
	}
	// Output:
	// 33.3 A offered, 30.0 A charging, 37.5 A for the conductor
	// danger string-above-controller
	// note output-clipped
	// note coldest-as-given
	// note fuse-by-the-bank
}

// Thin film is not in the table, which is for crystalline silicon.
func ExampleCellType() {
	for _, cells := range []solar.CellType{solar.CrystallineSilicon, solar.ThinFilm} {
		cold, err := solar.ColdVoltage(solar.ColdString{
			Rules:   solar.NEC2017,
			Panel:   solar.Panel{Voc: 22.5 * units.Volt, Cells: cells},
			Series:  2,
			Coldest: units.Celsius(-10),
		})
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%v: %.1f\n", cells, cold.Voltage)
	}
	// Output:
	// crystalline silicon: 51.3 V
	// solar.ColdVoltage: VoltageCoefficient = not given, want the maker's, since the table is for crystalline silicon
}
