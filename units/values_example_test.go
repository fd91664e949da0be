package units_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"example.com/drawbar/units"
)

// The ratings, prices and table cells of these examples are invented.

func ExamplePrinted() {
	p := units.MustPrinted("0.770", "Ω/kft")
	fmt.Println(p, "to the nearest", p.Resolution())
	fmt.Println(p.Covers(0.7695), p.Covers(0.7694))
	fmt.Println(p == units.MustPrinted("0.77", "Ω/kft"))
	// Output:
	// 0.770 Ω/kft to the nearest 0.001 Ω/kft
	// true false
	// false
}

func ExampleParsePrinted() {
	for _, text := range []string{"30.0 A", "1.72e-8 Ω·m", "1500 W to the nearest 100", "1,500 W"} {
		p, err := units.ParsePrinted(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%s in %s, resolution %v\n", p.Digits(), p.Unit(), p.Resolution())
	}
	// Output:
	// 30.0 in A, resolution 0.1 A
	// 1.72e-8 in Ω·m, resolution 1e-10 Ω·m
	// 1500 in W, resolution 100 W
	// parsing "1,500 W" as printed number: a comma may mean thousands or decimals; write 1200 or 1.2
}

func ExampleNewPrinted() {
	p, err := units.NewPrinted("0.80", "")
	fmt.Println(p, err)
	_, err = units.NewPrinted("30 A", "A")
	fmt.Println(err)
	// Output:
	// 0.80 <nil>
	// parsing "30 A" as digits: followed by " A"
}

func ExampleMustPrinted() {
	factors := []units.Printed{units.MustPrinted("0.71", ""), units.MustPrinted("0.80", "")}
	fmt.Println(factors)
	// Output: [0.71 0.80]
}

func ExampleAs() {
	r, err := units.As[units.ResistancePerLength](units.MustPrinted("0.770", "Ω/kft"))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Over(100 * units.Foot))
	_, err = units.As[units.Current](units.MustPrinted("12.8", "V"))
	fmt.Println(err)
	// Output:
	// 77 mΩ
	// parsing "12.8 V" as current: unknown unit; want one of A, mA, kA
}

func ExamplePrinted_Agrees() {
	drop := (20 * units.Ampere).Through(30 * units.Milliohm)
	for _, claim := range []string{"0.60 V", "600 mV", "0.6 V", "0.59 V"} {
		p, err := units.ParsePrinted(claim)
		if err != nil {
			fmt.Println(err)
			return
		}
		agrees, err := p.Agrees(drop)
		fmt.Println(p, agrees, err)
	}
	// Output:
	// 0.60 V true <nil>
	// 600 mV true <nil>
	// 0.6 V true <nil>
	// 0.59 V false <nil>
}

func ExamplePrinted_Covers() {
	p := units.MustPrinted("16.7", "%")
	fmt.Println(p.Covers(100.0/6), p.Covers(16.65), p.Covers(16.64))
	// Output: true true false
}

func ExamplePrinted_ToNearest() {
	p, err := units.MustPrinted("1500", "W").ToNearest("100")
	fmt.Println(p, err)
	fmt.Println(p.Covers(1460), p.Covers(1440))
	// Output:
	// 1500 W to the nearest 100 <nil>
	// true false
}

func ExamplePrinted_Mul() {
	limit := units.MustPrinted("40", "A")
	for _, factor := range []units.Printed{units.MustPrinted("0.71", ""), units.MustPrinted("80", "%")} {
		var err error
		if limit, err = limit.Mul(factor); err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(limit)
	}
	// Output:
	// 28.4 A
	// 22.72 A
}

func ExamplePrinted_Add() {
	a, b := units.MustPrinted("0.1", "A"), units.MustPrinted("0.20", "A")
	sum, err := a.Add(b)
	fmt.Println(sum, err)
	rest, err := sum.Sub(units.MustPrinted("0.30", "A"))
	fmt.Println(rest, err)
	// Output:
	// 0.30 A <nil>
	// 0.00 A <nil>
}

func ExamplePrinted_Cmp() {
	c, err := units.MustPrinted("0.77", "Ω/kft").Cmp(units.MustPrinted("0.770", "ohm/kft"))
	fmt.Println(c, err)
	// Output: 0 <nil>
}

func ExamplePrinted_Round() {
	p := units.MustPrinted("1549.5", "W")
	for _, places := range []int{0, -2, 3} {
		r, err := p.Round(places)
		fmt.Println(r, err)
	}
	// Output:
	// 1550 W <nil>
	// 1500 W to the nearest 100 <nil>
	// 1549.5 W <nil>
}

func ExamplePrinted_Temperature() {
	t, err := units.MustPrinted("167", "°F").Temperature()
	fmt.Println(t, err)
	// Output: 75 °C <nil>
}

func ExamplePrinted_MarshalText() {
	text, err := json.Marshal(units.MustPrinted("0.770", "Ω/kft"))
	fmt.Println(string(text), err)
	// Output: "0.770 Ω/kft" <nil>
}

func ExampleUnitError() {
	_, err := units.MustPrinted("30", "A").Add(units.MustPrinted("12.8", "V"))
	fmt.Println(err)
	var e *units.UnitError
	fmt.Println(errors.As(err, &e) && e.Want == "A", errors.Is(err, units.ErrUnit))
	// Output:
	// units.Printed.Add: 12.8 V is not in A
	// true true
}

func ExampleMoney() {
	total := units.MustMoney("0.00 USD")
	for _, price := range []string{"649.99 USD", "38.50 USD", "4.25 USD"} {
		m, err := units.ParseMoney(price)
		if err == nil {
			total, err = total.Add(m)
		}
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	tax, err := total.Mul(units.MustPrinted("7.25", "%"))
	fmt.Println(total, "and", tax, "tax", err)
	// Output: 692.74 USD and 50.22 USD tax <nil>
}

func ExampleParseMoney() {
	m, err := units.ParseMoney("1234.50 USD")
	fmt.Println(m.Amount().Digits(), m.Currency(), err)
	_, err = units.ParseMoney("$1234.50")
	fmt.Println(err)
	// Output:
	// 1234.50 USD <nil>
	// parsing "$1234.50" as amount of money: no number before "$1234.50"
}

func ExampleMustMoney() {
	fmt.Println(units.MustMoney("5.50 USD").Equal(units.MustMoney("5.5 USD")))
	// Output: true
}

func ExampleMoney_Times() {
	m, err := units.MustMoney("649.99 USD").Times(4)
	fmt.Println(m, err)
	// Output: 2599.96 USD <nil>
}

func ExampleMoney_Scale() {
	share := units.RatioOf(150*units.WattHour, units.KilowattHour)
	m, err := units.MustMoney("0.2230 USD").Scale(share)
	fmt.Println(m, err)
	cents, err := m.Round(2)
	fmt.Println(cents, err)
	// Output:
	// 0.0335 USD <nil>
	// 0.03 USD <nil>
}

func ExampleMoney_Over() {
	m, err := units.MustMoney("1000.00 USD").Over(12, 2)
	fmt.Println(m, err)
	// Output: 83.33 USD <nil>
}

func ExampleMoney_Sub() {
	_, err := units.MustMoney("20.00 USD").Sub(units.MustMoney("5.00 CAD"))
	fmt.Println(errors.Is(err, units.ErrUnit))
	left, err := units.MustMoney("20.00 USD").Sub(units.MustMoney("25.50 USD"))
	fmt.Println(left, left.Sign(), err)
	// Output:
	// true
	// -5.50 USD -1 <nil>
}

func ExampleLadder() {
	fuses := units.MustLadder("fuse rating", 15*units.Ampere, 20*units.Ampere, 30*units.Ampere)
	for _, load := range []units.Current{15.000000000000002 * units.Ampere, 15.0004 * units.Ampere, 31 * units.Ampere} {
		rating, err := fuses.Next(load)
		fmt.Println(rating, err)
	}
	// Output:
	// 15 A <nil>
	// 20 A <nil>
	// 0 A units.Ladder.Next: fuse rating = 31 A, want <= 30 A
}

func ExampleNewLadder() {
	_, err := units.NewLadder("fuse rating", 15*units.Ampere, 30*units.Ampere, 20*units.Ampere)
	fmt.Println(err)
	// Output: units.NewLadder: fuse rating, step 3 = 20 A, want above 30 A
}

func ExampleMustLadder() {
	fuses := units.MustLadder("fuse rating", 15*units.Ampere, 20*units.Ampere, 30*units.Ampere)
	fmt.Println(fuses)
	for i, rating := range fuses.All() {
		fmt.Println(i, rating)
	}
	// Output:
	// fuse rating: 15 A to 30 A in 3 steps
	// 0 15 A
	// 1 20 A
	// 2 30 A
}

func ExampleLadder_Bracket() {
	depths := units.MustLadder("depth of discharge", 20*units.Percent, 50*units.Percent, 80*units.Percent)
	cycles := []int{3000, 1200, 700}
	lo, hi, err := depths.Bracket(60 * units.Percent)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("between", cycles[hi], "and", cycles[lo], "cycles")
	// Output: between 700 and 1200 cycles
}

func ExampleLadder_Prev() {
	cables := units.MustLadder("cable length", 10*units.Foot, 25*units.Foot, 50*units.Foot)
	longest, err := cables.Prev(30 * units.Foot)
	fmt.Printf("%.0f ft %v\n", units.In(longest, units.Foot), err)
	// Output: 25 ft <nil>
}

func ExampleNewTemperatureLadder() {
	// The bands up to 25 °C, 26-30 °C and 31-35 °C, with their factors.
	bands, err := units.NewTemperatureLadder("ambient", units.Celsius(25), units.Celsius(30), units.Celsius(35))
	if err != nil {
		fmt.Println(err)
		return
	}
	factors := []units.Printed{units.MustPrinted("1.05", ""), units.MustPrinted("1.00", ""), units.MustPrinted("0.94", "")}
	for _, ambient := range []units.Temperature{units.Celsius(12), units.Fahrenheit(86), units.Celsius(30.4)} {
		row, err := bands.NextRow(ambient)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(ambient, factors[row])
	}
	// Output:
	// 12 °C 1.05
	// 30 °C 1.00
	// 30.4 °C 0.94
}

func ExampleMustTemperatureLadder() {
	bands := units.MustTemperatureLadder("ambient", units.Celsius(25), units.Celsius(30))
	_, err := bands.Next(units.Temperature{})
	fmt.Println(err)
	// Output: units.Ladder.Next: ambient = not given, want <= 30 °C
}

func ExampleOpt() {
	type inverter struct {
		Idle units.Opt[units.Power] `json:"idle,omitzero"`
	}
	for _, text := range []string{`{}`, `{"idle": null}`, `{"idle": "0 W"}`, `{"idle": "12 W"}`} {
		var in inverter
		if err := json.Unmarshal([]byte(text), &in); err != nil {
			fmt.Println(err)
			return
		}
		out, err := json.Marshal(in)
		fmt.Println(in.Idle, in.Idle.Or(20*units.Watt), string(out), err)
	}
	// Output:
	// not given 20 W {} <nil>
	// not given 20 W {} <nil>
	// 0 W 0 W {"idle":"0 W"} <nil>
	// 12 W 12 W {"idle":"12 W"} <nil>
}

func ExampleSome() {
	idle := units.Some(0 * units.Watt)
	v, given := idle.Get()
	fmt.Println(v, given, idle == units.None[units.Power]())
	// Output: 0 W true false
}

func ExampleNone() {
	fuse := units.None[units.Current]()
	fmt.Println(fuse, fuse.IsSet())
	// Output: not given false
}

func ExampleTextError() {
	_, err := units.Some([]string{"a"}).MarshalText()
	fmt.Println(err)
	var e *units.TextError
	fmt.Println(errors.As(err, &e) && e.Type == "[]string")
	// Output:
	// units.Opt.MarshalText: []string is not an encoding.TextMarshaler
	// true
}

func ExampleLegs() {
	loads := units.Legs[units.Current]{A: 22 * units.Ampere, B: 41.5 * units.Ampere}
	loads = loads.Plus(units.Legs[units.Current]{A: 12 * units.Ampere})
	fmt.Println("larger", loads.Larger(), "unbalance", loads.Unbalance())
	fmt.Println("half of all", loads.Scale(50*units.Percent).Total())
	// Output:
	// larger 41.5 A unbalance 7.5 A
	// half of all 37.75 A
}
