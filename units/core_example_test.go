package units_test

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"

	"example.com/drawbar/units"
)

func ExampleParse() {
	for _, text := range []string{"6 ft 3 in", `6'3"`, "2 m", "2 m 5", "2 V"} {
		run, err := units.Parse[units.Length](text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(run)
	}
	// Output:
	// 1.905 m
	// 1.905 m
	// 2 m
	// parsing "2 m 5" as length: nothing may follow m, found "5"
	// parsing "2 V" as length: unknown unit "V"; want one of m, mm, cm, km, ft, in, mil, mi
}

func ExampleMustParse() {
	battery := units.MustParse[units.Charge]("300Ah")
	fmt.Println(battery)
	// Output: 300 Ah
}

// A percentage that lost its sign is refused.
func ExampleParse_ratio() {
	for _, text := range []string{"85%", "0.85", "85"} {
		fmt.Println(units.Parse[units.Ratio](text))
	}
	// Output:
	// 85 % <nil>
	// 85 % <nil>
	// 0 % parsing "85" as ratio: a number without a unit must not be above 2; write it with % if that is meant
}

func ExampleParseError() {
	_, err := units.Parse[units.Power]("1,500 W")
	var e *units.ParseError
	if errors.As(err, &e) && errors.Is(err, units.ErrSyntax) {
		fmt.Println(e.Input)
		fmt.Println(e.Want)
		fmt.Println(e.Reason)
	}
	// Output:
	// 1,500 W
	// power
	// a comma may mean thousands or decimals; write 1200 or 1.2
}

func ExampleRangeError() {
	err := units.Above(0*units.Ampere).Check("wire.VoltageDrop", "Current", -2*units.Ampere)
	var e *units.RangeError
	if errors.As(err, &e) && errors.Is(err, units.ErrRange) {
		fmt.Println(e.Op, e.Field, e.Value, e.Allowed)
	}
	fmt.Println(err)
	// Output:
	// wire.VoltageDrop Current -2 A > 0 A
	// wire.VoltageDrop: Current = -2 A, want > 0 A
}

func ExampleIn() {
	fmt.Println(units.In(1500*units.Watt, units.Kilowatt))
	fmt.Println(units.In(15*units.Foot, units.Metre))
	// Output:
	// 1.5
	// 4.572
}

func ExampleMeasure() {
	fmt.Println(units.Measure(2*units.Mile, "km"))
	fmt.Println(units.Measure(85*units.Percent, "1"))
	fmt.Println(units.Measure(units.Celsius(25), "fahrenheit"))
	fmt.Println(units.Measure(2*units.Mile, "V"))
	// Output:
	// 3.218688 km <nil>
	// 0.85 1 <nil>
	// 77 °F <nil>
	// 0  parsing "V" as a unit of length: want one of m, mm, cm, km, ft, in, mil, mi
}

// What can be measured is a quantity or a temperature.
func ExampleValue() {
	for _, v := range []units.Value{12.8 * units.Volt, 20 * units.Ampere, units.Celsius(-10)} {
		fmt.Println(v)
	}
	// Output:
	// 12.8 V
	// 20 A
	// -10 °C
}

// A generic function over all quantities.
func ExampleQuantity() {
	fmt.Println(largest(9*units.Ampere, 14*units.Ampere, 3*units.Ampere))
	fmt.Println(largest(15*units.Foot, 4*units.Metre))
	// Output:
	// 14 A
	// 4.572 m
}

func largest[Q units.Quantity](first Q, more ...Q) Q {
	for _, q := range more {
		if units.Exceeds(q, first) {
			first = q
		}
	}
	return first
}

func ExampleSignificant() {
	fmt.Println(units.Significant(1.188, 2), units.Significant(0.25, 1), units.Significant(12345678, 3))
	// Output: 1.2 0.3 1.23e+07
}

func ExampleFixed() {
	fmt.Println(units.Fixed(11.8125, 2), units.Fixed(2.5, 0), units.Fixed(-0.04, 1))
	// Output: 11.81 3 0.0
}

func ExampleSettle() {
	var sum units.Current
	for range 150 {
		sum += 0.1 * units.Ampere
	}
	fmt.Println(sum == 15*units.Ampere, units.Settle(sum) == 15*units.Ampere)
	// Output: false true
}

func ExampleCompare() {
	fmt.Println(units.Compare(15.000000000000002*units.Ampere, 15*units.Ampere))
	fmt.Println(units.Compare(15.0004*units.Ampere, 15*units.Ampere))
	// Output:
	// 0
	// 1
}

func ExampleExceeds() {
	rating := 15 * units.Ampere
	fmt.Println(units.Exceeds(15.000000000000002*units.Ampere, rating))
	fmt.Println(units.Exceeds(15.0004*units.Ampere, rating))
	// Output:
	// false
	// true
}

func ExampleMinus() {
	left := units.Minus(15.000000000000002*units.Ampere, 15*units.Ampere)
	fmt.Println(left, left == 0)
	// Output: 0 A true
}

func ExampleBounds() {
	fmt.Println(units.Bounds[units.Voltage]{})
	fmt.Println(units.Between(10*units.Volt, 15*units.Volt))
	fmt.Println(units.Above(0 * units.Volt).AtMost(60 * units.Volt))
	// Output:
	// finite
	// 10 V to 15 V
	// > 0 V and <= 60 V
}

func ExampleAbove() {
	some := units.Above(0 * units.Ampere)
	fmt.Println(some, some.Contains(0*units.Ampere), some.Contains(1*units.Milliampere))
	// Output: > 0 A false true
}

func ExampleAtLeast() {
	full := units.AtLeast(12.6 * units.Volt)
	fmt.Println(full, full.Contains(12.6*units.Volt))
	// Output: >= 12.6 V true
}

func ExampleBetween() {
	fraction := units.Between(0*units.Percent, 100*units.Percent)
	fmt.Println(fraction, fraction.Contains(100*units.Percent), fraction.Contains(101*units.Percent))
	// Output: 0 % to 100 % true false
}

func ExampleBounds_Below() {
	half := units.AtLeast(0 * units.Percent).Below(50 * units.Percent)
	fmt.Println(half, half.Contains(50*units.Percent))
	// Output: >= 0 % and < 50 % false
}

func ExampleBounds_AtMost() {
	cord := units.Above(0 * units.Ampere).AtMost(30 * units.Ampere)
	fmt.Println(cord, cord.Contains(30*units.Ampere))
	// Output: > 0 A and <= 30 A true
}

func ExampleBounds_Contains() {
	rating := units.Between(0*units.Ampere, 15*units.Ampere)
	fmt.Println(rating.Contains(15.000000000000002*units.Ampere), rating.Contains(15.0004*units.Ampere))
	// Output: true false
}

func ExampleBounds_Check() {
	length := units.Above(0 * units.Metre)
	fmt.Println(length.Check("wire.VoltageDrop", "OneWay", 15*units.Foot))
	fmt.Println(length.Check("wire.VoltageDrop", "OneWay", 0*units.Foot))
	// Output:
	// <nil>
	// wire.VoltageDrop: OneWay = 0 m, want > 0 m
}

// The verbs of package fmt. The width counts the unit.
func Example_format() {
	drop := 1.188 * units.Volt
	fmt.Printf("[%v] [%.2v] [%9v] [%-9v] [%+v]\n", drop, drop, drop, drop, drop)
	fmt.Printf("[%f] [%.1f] [%9.1f] [%09.1f]\n", drop, drop, drop, drop)
	fmt.Printf("[%.2e] [%g] [%#v]\n", drop, drop, drop)
	fmt.Printf("%v is %.1f\n", 2400*units.Watt, 2400*units.Watt)
	// Output:
	// [1.188 V] [1.2 V] [  1.188 V] [1.188 V  ] [+1.188 V]
	// [1.188000 V] [1.2 V] [    1.2 V] [00001.2 V]
	// [1.19e+00 V] [1.188 V] [units.Voltage(1.188)]
	// 2.4 kW is 2400.0 W
}

// Quantities are text in JSON, as keys too. A temperature that was not given
// is left out.
func Example_json() {
	type site struct {
		Drop    map[units.Current]units.Voltage
		Ambient units.Temperature `json:",omitzero"`
		Low     units.Temperature `json:",omitzero"`
	}
	text, err := json.Marshal(site{
		Drop: map[units.Current]units.Voltage{10 * units.Ampere: 0.3 * units.Volt},
		Low:  units.Celsius(0),
	})
	fmt.Println(string(text), err)

	var back site
	err = json.Unmarshal([]byte(`{"Drop":{"20 amps":"600 mV"},"Ambient":"77 °F"}`), &back)
	fmt.Println(back.Drop, back.Ambient, back.Low, err)
	// Output:
	// {"Drop":{"10 A":"0.3 V"},"Low":"0 °C"} <nil>
	// map[20 A:600 mV] 25 °C not given <nil>
}

func Example_flag() {
	var oneWay units.Length
	var ambient units.Temperature
	set := flag.NewFlagSet("drop", flag.ContinueOnError)
	set.TextVar(&oneWay, "oneway", 10*units.Foot, "length from source to load")
	set.TextVar(&ambient, "ambient", units.Celsius(20), "air around the conductor")
	err := set.Parse([]string{"-oneway", "12 ft 6 in"})
	fmt.Println(oneWay, ambient, err)
	// Output: 3.81 m 20 °C <nil>
}

func ExampleTemperature() {
	inside := units.Fahrenheit(77)
	outside := units.Celsius(-10)
	fmt.Println(inside, inside.Sub(outside), outside.Add(5*units.Kelvin))
	fmt.Printf("%.1f °F, %.2f K\n", inside.Fahrenheit(), inside.Kelvin())
	// Output:
	// 25 °C 35 K -5 °C
	// 77.0 °F, 298.15 K
}

func ExampleParseTemperature() {
	for _, text := range []string{"77 °F", "-10C", "298.15 K", "77", "-500 °F"} {
		fmt.Println(units.ParseTemperature(text))
	}
	// Output:
	// 25 °C <nil>
	// -10 °C <nil>
	// 25 °C <nil>
	// not given parsing "77" as temperature: no unit; want one of °C, °F, K
	// not given units.ParseTemperature: temperature = -500 °F, want >= -273.15 °C
}

func ExampleCelsius() {
	fmt.Println(units.Celsius(0) == units.Fahrenheit(32), units.Celsius(-40).Fahrenheit())
	// Output: true -40
}

func ExampleFahrenheit() {
	fmt.Println(units.Fahrenheit(212).Celsius(), units.Fahrenheit(32).Kelvin())
	// Output: 100 273.15
}

// 0 °C is data; the zero value is not.
func ExampleTemperature_IsSet() {
	var none units.Temperature
	fmt.Println(none, none.IsSet(), none.IsZero(), none.Or(units.Celsius(20)))
	fmt.Println(units.Celsius(0), units.Celsius(0).IsSet(), units.Celsius(0).Or(units.Celsius(20)))
	// Output:
	// not given false true 20 °C
	// 0 °C true 0 °C
}

func ExampleTemperature_Compare() {
	charge := units.Celsius(0)
	fmt.Println(units.Fahrenheit(32).Compare(charge), units.Fahrenheit(31).Compare(charge))
	// Output: 0 -1
}

func ExampleTemperatureBounds() {
	charging := units.TemperatureBounds{Low: units.Celsius(0), High: units.Celsius(45)}
	fmt.Println(charging, charging.Contains(units.Fahrenheit(32)), charging.Contains(units.Temperature{}))
	fmt.Println(charging.Check("battery.Recharge", "Cells", units.Fahrenheit(14)))
	// Output:
	// 0 °C to 45 °C true false
	// battery.Recharge: Cells = -10 °C, want 0 °C to 45 °C
}

// One value of every quantity, in the unit that suits its size.
func Example_quantities() {
	for _, v := range []units.Value{
		12.8 * units.Volt, 20 * units.Ampere, 1.5 * units.Milliohm, 100 * units.AmpereHour,
		2500 * units.AmpereSquaredSecond,
		0.0172 * units.OhmSquareMillimetrePerMetre, 1.98 * units.OhmPerKilofoot,
		15 * units.Foot, 10 * units.KilocircularMil, 40 * units.GallonUS, 60 * units.CubicFootPerMinute,
		30 * units.Degree, 100 * units.Pound, 95 * units.PoundPerKilofoot, 1 * units.Atmosphere,
		60 * units.MilePerHour, 60 * units.Hertz,
		13.5 * units.KiloBtuITPerHour, 3600 * units.VoltAmpere, 1.2 * units.KilowattHour,
		1 * units.KilowattPerSquareMetre, 5.2 * units.KilowattHourPerSquareMetre,
		85 * units.Percent, 9 * units.FahrenheitDegree, 0.393 * units.PercentPerKelvin, 36 * units.Hour,
	} {
		fmt.Printf("%.4v\n", v)
	}
	// Output:
	// 12.8 V
	// 20 A
	// 1.5 mΩ
	// 100 Ah
	// 2500 A²s
	// 0.0172 Ω·mm²/m
	// 6.496 mΩ/m
	// 4.572 m
	// 5.067 mm²
	// 151.4 L
	// 101.9 m³/h
	// 30°
	// 45.36 kg
	// 141.4 g/m
	// 101.3 kPa
	// 26.82 m/s
	// 60 Hz
	// 3.956 kW
	// 3.6 kVA
	// 1.2 kWh
	// 1000 W/m²
	// 5.2 kWh/m²
	// 85 %
	// 5 K
	// 0.393 %/K
	// 1.5 d
}
