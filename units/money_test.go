package units_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"strings"
	"testing"

	"example.com/drawbar/units"
)

// All prices are invented; expected amounts are worked by hand.

func TestParseMoney(t *testing.T) {
	for _, test := range []struct{ text, want, currency, amount string }{
		{"1234.50 USD", "1234.50 USD", "USD", "1234.50"},
		{"0.00 USD", "0.00 USD", "USD", "0.00"},
		{"-20 EUR", "-20 EUR", "EUR", "-20"},
		{"\u221220.5EUR", "-20.5 EUR", "EUR", "-20.5"},
		{" +7   JPY ", "7 JPY", "JPY", "7"},
		{".05 CAD", "0.05 CAD", "CAD", "0.05"},
		{"-0.00 CAD", "0.00 CAD", "CAD", "0.00"},
		{"1 XQZ", "1 XQZ", "XQZ", "1"}, // the letters are not looked up
		{"1000000000000000000 USD", "1000000000000000000 USD", "USD", "1000000000000000000"},
		{"0.000000000000000001 USD", "0.000000000000000001 USD", "USD", "0.000000000000000001"},
	} {
		m, err := units.ParseMoney(test.text)
		if err != nil || m.String() != test.want || m.Currency() != test.currency || m.Amount().Digits() != test.amount {
			t.Errorf("ParseMoney(%q) = %v (%v in %q), %v, want %s", test.text, m, m.Amount().Digits(), m.Currency(), err, test.want)
		}
		if !m.IsSet() || m.IsZero() {
			t.Errorf("ParseMoney(%q) is not given", test.text)
		}
		roundTripMoney(t, m)
	}
}

// roundTripMoney demands that the text of m reads back as m, twice.
func roundTripMoney(t *testing.T, m units.Money) {
	t.Helper()
	n := m
	for range 2 {
		text, err := n.MarshalText()
		if err != nil {
			t.Fatalf("(%v).MarshalText: %v", n, err)
		}
		if appended, err := n.AppendText([]byte("x")); err != nil || string(appended) != "x"+string(text) || string(text) != n.String() {
			t.Errorf("AppendText = %q, %v, MarshalText = %q, String = %q", appended, err, text, n.String())
		}
		n = units.MustMoney("99 EUR")
		if err := n.UnmarshalText(text); err != nil || n != m {
			t.Fatalf("%q reads back as %v, %v, want %v", text, n, err, m)
		}
	}
}

func TestParseMoneyErrors(t *testing.T) {
	for _, test := range []struct{ text, want string }{
		{"", "no number"}, {"USD", "no number"}, {"USD 12", "no number"}, {"$12", "no number"},
		{"12", "three capital letters"}, {"12 usd", "three capital letters"}, {"12 US", "three capital letters"},
		{"12 USDT", "three capital letters"}, {"12 U1D", "three capital letters"}, {"12 €", "three capital letters"},
		{"12 USD/kWh", "three capital letters"},
		{"12 USD to the nearest 10", "three capital letters"},
		{"1,234.50 USD", "comma"}, {"1.2e3 USD", "power of ten"}, {"\xff USD", "UTF-8"},
	} {
		m, err := units.ParseMoney(test.text)
		if !errors.Is(err, units.ErrSyntax) || !strings.Contains(err.Error(), test.want) || m.IsSet() {
			t.Errorf("ParseMoney(%q) = %v, %v, want a ParseError with %q", test.text, m, err, test.want)
		}
	}
	for _, text := range []string{"1000000000000000001 USD", "0.0000000000000000001 USD", "99999999999999999999 USD"} {
		_, err := units.ParseMoney(text)
		wantRange(t, text, err)
	}
	defer func() {
		if err, ok := recover().(error); !ok || !errors.Is(err, units.ErrSyntax) {
			t.Errorf("MustMoney panics with %v, want a ParseError", err)
		}
	}()
	units.MustMoney("twelve USD")
}

func TestMoneyArithmetic(t *testing.T) {
	usd := units.MustMoney
	for _, test := range []struct {
		what string
		got  func() (units.Money, error)
		want string
	}{
		{"sum", func() (units.Money, error) { return usd("1234.50 USD").Add(usd("0.755 USD")) }, "1235.255 USD"},
		{"ten cents and twenty", func() (units.Money, error) { return usd("0.10 USD").Add(usd("0.20 USD")) }, "0.30 USD"},
		{"difference", func() (units.Money, error) { return usd("5 USD").Sub(usd("7.25 USD")) }, "-2.25 USD"},
		{"nothing left", func() (units.Money, error) { return usd("5.00 USD").Sub(usd("5 USD")) }, "0.00 USD"},
		{"four of them", func() (units.Money, error) { return usd("649.99 USD").Times(4) }, "2599.96 USD"},
		{"none of them", func() (units.Money, error) { return usd("649.99 USD").Times(0) }, "0.00 USD"},
		{"given back", func() (units.Money, error) { return usd("649.99 USD").Times(-1) }, "-649.99 USD"},
		// 1234.50 · 0.0725 = 89.50125; 0.5 · 0.25 = 0.125, a tie.
		{"tax", func() (units.Money, error) { return usd("1234.50 USD").Mul(units.MustPrinted("7.25", "%")) }, "89.50 USD"},
		{"factor", func() (units.Money, error) { return usd("1234.50 USD").Mul(units.MustPrinted("0.0725", "")) }, "89.50 USD"},
		{"tie", func() (units.Money, error) { return usd("0.50 USD").Mul(units.MustPrinted("0.25", "")) }, "0.13 USD"},
		{"tie below", func() (units.Money, error) { return usd("-0.50 USD").Mul(units.MustPrinted("0.25", "")) }, "-0.13 USD"},
		{"whole currency", func() (units.Money, error) { return usd("1200 JPY").Mul(units.MustPrinted("7.125", "%")) }, "86 JPY"},
		{"many decimals", func() (units.Money, error) { return usd("0.1432 USD").Times(812) }, "116.2784 USD"},
		// A sixth of 100; a computed ratio a hair off a tie is on it.
		{"sixth", func() (units.Money, error) { return usd("100.00 USD").Scale(units.One / 6) }, "16.67 USD"},
		{"settled tie", func() (units.Money, error) { return usd("1.00 USD").Scale(0.125 - 1e-15) }, "0.13 USD"},
		{"negative", func() (units.Money, error) { return usd("1.00 USD").Scale(-units.One / 3) }, "-0.33 USD"},
		{"nothing", func() (units.Money, error) { return usd("1.00 USD").Scale(0) }, "0.00 USD"},
		{"a trace", func() (units.Money, error) { return usd("1.00 USD").Scale(5e-324) }, "0.00 USD"},
		{"a twelfth", func() (units.Money, error) { return usd("1000.00 USD").Over(12, 2) }, "83.33 USD"},
		{"half a cent", func() (units.Money, error) { return usd("0.05 USD").Over(2, 2) }, "0.03 USD"},
		{"half a cent owed", func() (units.Money, error) { return usd("-0.05 USD").Over(2, 2) }, "-0.03 USD"},
		{"whole", func() (units.Money, error) { return usd("7.00 USD").Over(2, 0) }, "4 USD"},
		{"finer", func() (units.Money, error) { return usd("7 USD").Over(3, 4) }, "2.3333 USD"},
		{"rounded", func() (units.Money, error) { return usd("116.2784 USD").Round(2) }, "116.28 USD"},
		{"filled up", func() (units.Money, error) { return usd("1200 USD").Round(2) }, "1200.00 USD"},
		{"tie rounded", func() (units.Money, error) { return usd("2.5 USD").Round(0) }, "3 USD"},
		{"debt rounded", func() (units.Money, error) { return usd("-2.5 USD").Round(0) }, "-3 USD"},
		{"nothing rounded", func() (units.Money, error) { return usd("-0.4 USD").Round(0) }, "0 USD"},
	} {
		got, err := test.got()
		if err != nil || got.String() != test.want {
			t.Errorf("%s: %v, %v, want %s", test.what, got, err, test.want)
		}
		roundTripMoney(t, got)
	}
}

func TestMoneyErrors(t *testing.T) {
	m, eur := units.MustMoney("12.50 USD"), units.MustMoney("12.50 EUR")
	most := units.MustMoney("1000000000000000000 USD")
	var none units.Money

	_, err := m.Add(eur)
	wantUnit(t, "units.Money.Add", err)
	if want := "units.Money.Add: 12.50 EUR is not in USD"; err.Error() != want {
		t.Errorf("message %q, want %q", err, want)
	}
	_, err = m.Sub(eur)
	wantUnit(t, "units.Money.Sub", err)
	_, err = m.Cmp(eur)
	wantUnit(t, "units.Money.Cmp", err)
	_, err = m.Mul(units.MustPrinted("3", "kWh"))
	wantUnit(t, "units.Money.Mul", err)

	ratio := units.MustPrinted("0.5", "")
	for name, f := range map[string]func() (units.Money, error){
		// Too many digits.
		"Add":   func() (units.Money, error) { return most.Add(units.MustMoney("0.01 USD")) },
		"Sub":   func() (units.Money, error) { return units.MustMoney("-1 USD").Sub(most) },
		"Times": func() (units.Money, error) { return most.Times(2) },
		"most":  func() (units.Money, error) { return most.Times(math.MaxInt) },
		"Mul":   func() (units.Money, error) { return most.Mul(units.MustPrinted("1e280", "")) },
		"Scale": func() (units.Money, error) { return most.Scale(math.MaxFloat64) },
		"Over":  func() (units.Money, error) { return most.Over(1, 2) },
		"Round": func() (units.Money, error) { return most.Round(1) },
		// No number.
		"Scale NaN": func() (units.Money, error) { return m.Scale(units.Ratio(math.NaN())) },
		"Scale Inf": func() (units.Money, error) { return m.Scale(units.Ratio(math.Inf(1))) },
		// Out of range.
		"Over 0":          func() (units.Money, error) { return m.Over(0, 2) },
		"Over -1":         func() (units.Money, error) { return m.Over(-1, 2) },
		"Over places 19":  func() (units.Money, error) { return m.Over(1, 19) },
		"Over places -1":  func() (units.Money, error) { return m.Over(1, -1) },
		"Round places 19": func() (units.Money, error) { return m.Round(19) },
		"Round places -1": func() (units.Money, error) { return m.Round(-1) },
		// Not given.
		"none Add":    func() (units.Money, error) { return none.Add(m) },
		"Add none":    func() (units.Money, error) { return m.Add(none) },
		"Sub none":    func() (units.Money, error) { return m.Sub(none) },
		"none Times":  func() (units.Money, error) { return none.Times(2) },
		"none Mul":    func() (units.Money, error) { return none.Mul(ratio) },
		"Mul none":    func() (units.Money, error) { return m.Mul(units.Printed{}) },
		"none Scale":  func() (units.Money, error) { return none.Scale(units.One) },
		"none Over":   func() (units.Money, error) { return none.Over(2, 2) },
		"none Round":  func() (units.Money, error) { return none.Round(2) },
		"none Cmp":    func() (units.Money, error) { _, err := none.Cmp(m); return none, err },
		"Cmp none":    func() (units.Money, error) { _, err := m.Cmp(none); return none, err },
		"nones apart": func() (units.Money, error) { _, err := none.Cmp(none); return none, err },
	} {
		got, err := f()
		wantRange(t, name, err)
		if got != none {
			t.Errorf("%s: %v beside the error", name, got)
		}
	}
}

func TestMoneyNotGiven(t *testing.T) {
	var none units.Money
	if none.IsSet() || !none.IsZero() || none.String() != "not given" || none.Currency() != "" || none.Sign() != 0 || none.Amount().IsSet() {
		t.Errorf("zero Money: %#v", none)
	}
	if zero := units.MustMoney("0 USD"); zero == none || zero.IsZero() || zero.Equal(none) {
		t.Error("an amount of nothing is not told from not given")
	}
	read := units.MustMoney("1 USD")
	text, err := none.MarshalText()
	if err != nil || len(text) != 0 || read.UnmarshalText(text) != nil || read != none {
		t.Errorf("text of no amount: %q, %v, reads back as %v", text, err, read)
	}
	m := units.MustMoney("1 USD")
	if err := m.UnmarshalText([]byte("one USD")); !errors.Is(err, units.ErrSyntax) || m != units.MustMoney("1 USD") {
		t.Errorf("UnmarshalText(one USD): %v, %v", m, err)
	}
	type bill struct {
		Paid units.Money `json:",omitzero"`
		Due  units.Money `json:",omitzero"`
	}
	if got, err := json.Marshal(bill{Due: units.MustMoney("12.50 USD")}); err != nil || string(got) != `{"Due":"12.50 USD"}` {
		t.Errorf("JSON: %s, %v", got, err)
	}
}

func TestMoneyCompare(t *testing.T) {
	for _, test := range []struct {
		m, n string
		want int
	}{
		{"5.5 USD", "5.50 USD", 0}, {"5.49 USD", "5.5 USD", -1}, {"-5 USD", "5 USD", -1}, {"0 USD", "-0.01 USD", 1},
		{"1000000000000000000 USD", "999999999999999999 USD", 1},
	} {
		m, n := units.MustMoney(test.m), units.MustMoney(test.n)
		if got, err := m.Cmp(n); err != nil || got != test.want {
			t.Errorf("(%v).Cmp(%v) = %d, %v, want %d", m, n, got, err, test.want)
		}
		if got, err := n.Cmp(m); err != nil || got != -test.want {
			t.Errorf("(%v).Cmp(%v) = %d, %v, want %d", n, m, got, err, -test.want)
		}
		if m.Equal(n) != (test.want == 0) {
			t.Errorf("(%v).Equal(%v) = %t", m, n, m.Equal(n))
		}
	}
	if units.MustMoney("5 USD").Equal(units.MustMoney("5 EUR")) {
		t.Error("5 USD equals 5 EUR")
	}
	for text, want := range map[string]int{"-0.01 USD": -1, "0.00 USD": 0, "0.01 USD": 1} {
		if got := units.MustMoney(text).Sign(); got != want {
			t.Errorf("(%s).Sign() = %d, want %d", text, got, want)
		}
	}
}

func TestMoneyLaws(t *testing.T) {
	random := func(r *rand.Rand) units.Money {
		coef, places := r.Int64N(1e9)-5e8, r.IntN(5)
		return units.MustMoney(fmt.Sprintf("%.*f USD", places, float64(coef)/math.Pow10(places)))
	}
	must := func(m units.Money, err error) units.Money {
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	laws := map[string]func(a, b, c units.Money) bool{
		"a sum commutes, as written": func(a, b, c units.Money) bool { return must(a.Add(b)) == must(b.Add(a)) },
		"a sum associates, as written": func(a, b, c units.Money) bool {
			return must(must(a.Add(b)).Add(c)) == must(a.Add(must(b.Add(c))))
		},
		"Sub undoes Add": func(a, b, c units.Money) bool { return must(must(a.Add(b)).Sub(b)).Equal(a) },
		"Times is repeated Add": func(a, b, c units.Money) bool {
			return must(a.Times(3)) == must(must(a.Add(a)).Add(a))
		},
		"Mul by a whole number is Times": func(a, b, c units.Money) bool {
			return must(a.Mul(units.MustPrinted("7", ""))) == must(a.Times(7))
		},
		"Scale by a whole number is Times": func(a, b, c units.Money) bool { return must(a.Scale(7)) == must(a.Times(7)) },
		"a share times the sharers is off by half a unit each at most": func(a, b, c units.Money) bool {
			off := must(must(must(a.Over(12, 4)).Times(12)).Sub(a))
			return math.Abs(off.Amount().Float()) <= 12*0.00005+1e-12
		},
		"Over is the exact quotient, rounded half away from zero": func(a, b, c units.Money) bool {
			exact := new(big.Rat).Quo(rational(t, a.Amount()), big.NewRat(48, 1))
			return must(a.Over(48, 3)).Amount().Digits() == unsigned(exact.FloatString(3))
		},
		"Round is the exact amount, rounded half away from zero": func(a, b, c units.Money) bool {
			return must(a.Round(1)).Amount().Digits() == unsigned(rational(t, a.Amount()).FloatString(1))
		},
		"Round is idempotent": func(a, b, c units.Money) bool { return must(must(a.Round(2)).Round(2)) == must(a.Round(2)) },
		"order is that of the difference": func(a, b, c units.Money) bool {
			cmp, err := a.Cmp(b)
			return err == nil && cmp == must(a.Sub(b)).Sign()
		},
	}
	for name, law := range laws {
		t.Run(name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(5, 6))
			for range 500 {
				if a, b, c := random(r), random(r), random(r); !law(a, b, c) {
					t.Fatalf("broken by %v, %v, %v", a, b, c)
				}
			}
		})
	}
}

// unsigned takes the minus off a zero; FloatString rounds half away from zero
// as Money does, but keeps it.
func unsigned(s string) string {
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}

func FuzzMoney(f *testing.F) {
	f.Add("1234.50 USD", "0.755 USD", "-20 USD")
	f.Add("1000000000000000000 USD", "1 USD", "-1 USD")
	f.Add("0.000000000000000001 EUR", "5 EUR", "0 EUR")
	f.Add("12 usd", "1e3 USD", "")
	f.Add("-.5JPY", "5.JPY", "07 JPY")
	f.Fuzz(func(t *testing.T, x, y, z string) {
		var m [3]units.Money
		for i, s := range []string{x, y, z} {
			var err error
			m[i], err = units.ParseMoney(s)
			if err != nil {
				if !errors.Is(err, units.ErrSyntax) && !errors.Is(err, units.ErrRange) {
					t.Fatalf("ParseMoney(%q): untyped error %v", s, err)
				}
				return
			}
			roundTripMoney(t, m[i])
		}
		a, b, c := m[0], m[1], m[2]
		ab, errAB := a.Add(b)
		ba, errBA := b.Add(a)
		if ab != ba || (errAB == nil) != (errBA == nil) {
			t.Errorf("%v + %v = %v, %v, but the other way round %v, %v", a, b, ab, errAB, ba, errBA)
		}
		if errAB != nil && !errors.Is(errAB, units.ErrUnit) && !errors.Is(errAB, units.ErrRange) {
			t.Errorf("%v + %v: untyped error %v", a, b, errAB)
		}
		bc, errBC := b.Add(c)
		if errAB != nil || errBC != nil {
			return
		}
		left, errLeft := ab.Add(c)
		right, errRight := a.Add(bc)
		if left != right || (errLeft == nil) != (errRight == nil) {
			t.Errorf("(%v + %v) + %v = %v, %v, but %v, %v", a, b, c, left, errLeft, right, errRight)
		}
	})
}
