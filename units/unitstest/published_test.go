package unitstest_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
)

const header = "id,call,given,expect,kind,width,why,source,provenance,note\n"

// The published file of these tests is invented; only the arithmetic is true.
var invented = map[string]func(*unitstest.Case){
	"drop": func(c *unitstest.Case) {
		v := unitstest.In[units.Current](c, "current").Through(unitstest.In[units.Resistance](c, "loop"))
		c.MayGet("drop", v)
		c.MayGet("percent", units.RatioOf(v, 12*units.Volt))
		c.MayGet("fraction", units.RatioOf(v, 12*units.Volt))
	},
	"warm": func(c *unitstest.Case) {
		c.Got("metal", c.Temperature("air").Add(10*units.Kelvin))
		c.MayGet("rise", 10*units.Kelvin)
	},
	"size": func(c *unitstest.Case) {
		c.GotText("size", strings.ToUpper(c.Text("size")))
	},
}

// published runs rows, which need no header, with the calls.
func published(t *testing.T, rows string, calls map[string]func(*unitstest.Case), excused map[string]string) (unitstest.Report, *fake) {
	t.Helper()
	repository(t, map[string]string{"testdata/published/invented.csv": "# a comment\n" + header + rows})
	var report unitstest.Report
	r := record(t, func(tb testing.TB) { report = unitstest.Published(tb, "invented.csv", calls, excused) })
	return report, r
}

// only returns the call that row uses, so that none is left over.
func only(row string) map[string]func(*unitstest.Case) {
	name := strings.SplitN(row, ",", 3)[1]
	if invented[name] == nil {
		return nil
	}
	return inventedCalls(name)
}

func TestPublishedRow(t *testing.T) {
	for _, c := range []struct {
		name, row string
		want      string // failure, or none
	}{
		// Digits: 20 A through 0.18 ohm is 3.6 V, 30 % of 12 V.
		{"digits", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,,Book,read,", ""},
		{"fewer digits", "A,drop,current=20 A; loop=0.18 ohm,drop=4 V,digits,,,Book,read,", ""},
		{"two results", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V; percent=30.0 %,digits,,,Book,read,", ""},
		{"a number without unit", "A,drop,current=20 A; loop=0.18 ohm,fraction=0.30,digits,,,Book,read,", ""},
		{"other unit", "A,drop,current=20 A; loop=0.18 ohm,drop=3600 mV,digits,,,Book,read,", ""},
		{"half of the last digit", "A,drop,current=20 A; loop=0.18 ohm,drop=3.605 V,digits,,,Book,read,",
			"drop = 3.6 V, printed 3.605 V (kind digits)"},
		{"boundary above", "A,drop,current=1 A; loop=0.125 ohm,drop=0.13 V,digits,,,Book,read,", ""},
		{"boundary below", "A,drop,current=1 A; loop=0.125 ohm,drop=0.12 V,digits,,,Book,read,", ""},
		{"past the boundary", "A,drop,current=1 A; loop=0.1251 ohm,drop=0.12 V,digits,,,Book,read,", "drop = 0.1251 V, printed 0.12 V"},
		{"wrong last digit", "A,drop,current=20 A; loop=0.18 ohm,drop=3.61 V,digits,,,Book,read,",
			"invented.csv:3: A: drop = 3.6 V, printed 3.61 V (kind digits)"},
		{"wrong sign", "A,drop,current=20 A; loop=0.18 ohm,drop=-3.60 V,digits,,,Book,read,", "printed -3.60 V"},
		{"one of two wrong", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V; percent=31 %,digits,,,Book,read,", "percent = 30 %, printed 31 %"},
		// Widths.
		{"inside a ratio", "A,drop,current=20 A; loop=0.18 ohm,drop=3.65 V,tolerance,1.5 %,chart,Book,read,", ""},
		{"outside a ratio", "A,drop,current=20 A; loop=0.18 ohm,drop=3.66 V,tolerance,1.5 %,chart,Book,read,",
			"drop = 3.6 V, printed 3.66 V (kind tolerance 1.5 %)"},
		{"inside a quantity", "A,drop,current=20 A; loop=0.18 ohm,drop=3.62 V,tolerance,20 mV,chart,Book,read,", ""},
		{"outside a quantity", "A,drop,current=20 A; loop=0.18 ohm,drop=3.63 V,tolerance,0.02 V,chart,Book,read,", "printed 3.63 V"},
		{"narrower than the digits", "A,drop,current=20 A; loop=0.18 ohm,drop=4 V,tolerance,1 %,chart,Book,read,", ""},
		{"a ratio is of what was printed", "A,drop,current=20 A; loop=0.18 ohm,percent=31.0 %,tolerance,2 %,chart,Book,read,",
			"percent = 30 %, printed 31.0 %"},
		{"measured, inside", "A,drop,current=20 A; loop=0.18 ohm,drop=3.50 V,measured,3 %,bench,Book,read,", ""},
		{"measured, outside", "A,drop,current=20 A; loop=0.18 ohm,drop=3.40 V,measured,3 %,bench,Book,read,", "printed 3.40 V"},
		// Temperatures.
		{"temperature", "A,warm,air=77 °F,metal=35 °C,digits,,,Book,read,", ""},
		{"temperature, other", "A,warm,air=77 °F,metal=36 °C,digits,,,Book,read,", "metal = 35 °C, printed 36 °C"},
		{"temperature in Fahrenheit", "A,warm,air=25 °C,metal=95 °F,digits,,,Book,read,", ""},
		{"temperature inside a width", "A,warm,air=25 °C,metal=97 °F,tolerance,2 °F,chart,Book,read,", ""},
		{"temperature outside a width", "A,warm,air=25 °C,metal=97 °F,tolerance,1 K,chart,Book,read,", "metal = 95 °F, printed 97 °F"},
		{"temperature with a ratio", "A,warm,air=25 °C,metal=36 °C,tolerance,5 %,chart,Book,read,", `metal: width "5 %"`},
		// Text.
		{"text", "A,size,size=2/0 awg,size=2/0 AWG,digits,,,Book,read,", ""},
		{"other text", "A,size,size=2/0 awg,size=3/0 AWG,digits,,,Book,read,", `size = "2/0 AWG", printed "3/0 AWG"`},
		{"a width does not help text", "A,size,size=2/0 awg,size=3/0 AWG,tolerance,50 %,chart,Book,read,", `size = "2/0 AWG", printed "3/0 AWG"`},
		// Wrong cells.
		{"no id", ",drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,,Book,read,", "no id"},
		{"no call", "A,,,drop=3.60 V,digits,,,Book,read,", "no call"},
		{"no expectation", "A,drop,current=20 A; loop=0.18 ohm,,digits,,,Book,read,", "no expect"},
		{"no source", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,,,read,", "no source"},
		{"no provenance", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,,Book,,", `provenance ""`},
		{"invented provenance", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,,Book,heard,", `provenance "heard"; want one of ["read" "derived" "memory" "common practice"]`},
		{"no kind", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,,,,Book,read,", `kind ""`},
		{"width for digits", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,1 %,,Book,read,", "kind digits has no width"},
		{"reason for digits", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,because,Book,read,", "kind digits has no width"},
		{"no width", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,tolerance,,chart,Book,read,", "kind tolerance needs a width and the reason"},
		{"no reason", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,measured,1 %,,Book,read,", "kind measured needs a width and the reason"},
		{"width of another quantity", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,tolerance,1 A,chart,Book,read,", `drop: width "1 A"`},
		{"width zero", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,tolerance,0 %,chart,Book,read,", "not above zero"},
		{"width negative", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,tolerance,-1 V,chart,Book,read,", "not above zero"},
		{"temperature width negative", "A,warm,air=25 °C,metal=35 °C,tolerance,-1 K,chart,Book,read,", "not above zero"},
		{"given without value", "A,drop,current=; loop=0.18 ohm,drop=3.60 V,digits,,,Book,read,", `given: "current=" is not name=value`},
		{"given without name", "A,drop,=20 A,drop=3.60 V,digits,,,Book,read,", `given: "=20 A" is not name=value`},
		{"given twice", "A,drop,current=20 A; current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,,Book,read,", "given: current is there twice"},
		{"expected twice", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V; drop=3.6 V,digits,,,Book,read,", "expect: drop is there twice"},
		{"expected unreadable", "A,drop,current=20 A; loop=0.18 ohm,drop=lots,digits,,,Book,read,", "drop: "},
		{"expected in another quantity", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 A,digits,,,Book,read,", "drop: "},
		{"too many cells", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,,Book,read,,", "wrong number of fields"},
		{"too few cells", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,,Book,read", "wrong number of fields"},
		{"no rows", "", "no rows"},
		// Givens and calls.
		{"given not read", "A,drop,current=20 A; loop=0.18 ohm; size=10 AWG,drop=3.60 V,digits,,,Book,read,", "given size is not read"},
		{"not given", "A,drop,current=20 A,drop=3.60 V,digits,,,Book,read,", "the call reads loop, which is not given"},
		{"given unreadable", "A,drop,current=20 V; loop=0.18 ohm,drop=3.60 V,digits,,,Book,read,", "given current: "},
		{"temperature unreadable", "A,warm,air=25,metal=35 °C,digits,,,Book,read,", "given air: "},
		{"not answered", "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V; heat=72 W,digits,,,Book,read,", "heat is not answered"},
		{"not expected", "A,warm,air=25 °C,rise=10 K,digits,,,Book,read,", "the call answers metal, which is not expected"},
		{"unknown call", "A,drip,current=20 A,drop=3.60 V,digits,,,Book,read,", `no call "drip"`},
	} {
		t.Run(c.name, func(t *testing.T) {
			rows := c.row + "\n"
			calls := only(c.row + ",,")
			if c.row == "" {
				rows, calls = "", nil
			}
			_, r := published(t, rows, calls, nil)
			r.expect(t, c.want)
		})
	}
}

const (
	right = "A,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,,Book,read,\n"
	wrong = "B,drop,current=20 A; loop=0.18 ohm,drop=3.70 V,digits,,,Book,read,misprint\n"
)

func TestPublishedFile(t *testing.T) {
	drop := map[string]func(*unitstest.Case){"drop": invented["drop"]}
	for _, c := range []struct {
		name, rows string
		calls      map[string]func(*unitstest.Case)
		excused    map[string]string
		want       string
	}{
		{"excused", right + wrong, drop, map[string]string{"B": "misprint"}, ""},
		{"not excused", right + wrong, drop, nil, "invented.csv:4: B: drop = 3.6 V, printed 3.70 V"},
		{"excuse not needed", right + wrong, drop, map[string]string{"A": "misprint", "B": "misprint"}, "A: no longer needs its excuse: misprint"},
		{"excuse for no row", right, drop, map[string]string{"C": "misprint"}, `no row has the excused id "C"`},
		{"excuse without reason", wrong, drop, map[string]string{"B": ""}, "B: excused without a reason"},
		{"an excuse does not cover what is unread",
			"B,drop,current=20 A; loop=0.18 ohm; size=8 AWG,drop=3.70 V,digits,,,Book,read,\n", drop, map[string]string{"B": "misprint"}, "given size is not read"},
		{"an excuse does not cover an error",
			"B,drop,current=20 A,drop=3.70 V,digits,,,Book,read,\n", drop, map[string]string{"B": "misprint"}, "reads loop, which is not given"},
		{"id twice", right + right, drop, nil, "id of line 3 again"},
		{"call without a row", right, inventedCalls("drop", "warm"), nil, `no row has the call "warm"`},
		{"quote left open", right + "B,\"drop", drop, nil, "invented.csv: "},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, r := published(t, c.rows, c.calls, c.excused)
			r.expect(t, c.want)
		})
	}
}

// inventedCalls returns the calls of those names.
func inventedCalls(names ...string) map[string]func(*unitstest.Case) {
	calls := map[string]func(*unitstest.Case){}
	for _, name := range names {
		calls[name] = invented[name]
	}
	return calls
}

// What a call itself can do wrong.
func TestPublishedCalls(t *testing.T) {
	for _, c := range []struct {
		name string
		call func(*unitstest.Case)
		want string
	}{
		{"right", func(c *unitstest.Case) { c.Text("a"); c.Got("b", 2*units.Volt) }, ""},
		{"answered twice", func(c *unitstest.Case) { c.Text("a"); c.Got("b", 2*units.Volt); c.Got("b", 2*units.Volt) }, "b is answered twice"},
		{"answered as text too", func(c *unitstest.Case) { c.Text("a"); c.Got("b", 2*units.Volt); c.GotText("b", "2.0 V") }, "b is answered twice"},
		{"text not expected", func(c *unitstest.Case) { c.Text("a"); c.Got("b", 2*units.Volt); c.GotText("c", "2.0 V") }, "answers c, which is not expected"},
		{"NaN", func(c *unitstest.Case) { c.Text("a"); c.Got("b", units.Voltage(math.NaN())) }, "b: the result is NaN"},
		{"infinity", func(c *unitstest.Case) { c.Text("a"); c.Got("b", units.Voltage(math.Inf(1))) }, "b: the result is +Inf"},
		{"nothing", func(c *unitstest.Case) { c.Text("a"); c.Got("b", nil) }, "b: "},
		{"temperature not set", func(c *unitstest.Case) { c.Text("a"); c.Got("b", units.Temperature{}) }, "b: "},
		{"Has does not read", func(c *unitstest.Case) { c.Has("a"); c.Got("b", 2*units.Volt) }, "given a is not read"},
		{"failed", func(c *unitstest.Case) { c.Fatalf("%s: %d", c.ID(), 7) }, "A: A: 7"},
		{"Has", func(c *unitstest.Case) {
			if c.Text("a"); !c.Has("a") || c.Has("b") || c.Has("") {
				c.Fatalf("Has is wrong")
			}
			c.Got("b", 2*units.Volt)
		}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, r := published(t, "A,call,a=1,b=2.0 V,digits,,,Book,read,\n", map[string]func(*unitstest.Case){"call": c.call}, nil)
			r.expect(t, c.want)
		})
	}
}

// A panic of the code under test is not swallowed, and names the row.
func TestPublishedPanic(t *testing.T) {
	defer func() {
		if e := recover(); e != "A: boom" {
			t.Errorf("recovered %v", e)
		}
	}()
	published(t, "A,call,a=1,b=2.0 V,digits,,,Book,read,\n",
		map[string]func(*unitstest.Case){"call": func(*unitstest.Case) { panic("boom") }}, nil)
	t.Error("no panic")
}

func TestPublishedFileMissing(t *testing.T) {
	repository(t, nil)
	record(t, func(tb testing.TB) { unitstest.Published(tb, "none.csv", nil, nil) }).expect(t, "none.csv")
}

func TestPublishedHeader(t *testing.T) {
	for _, h := range []string{"", "id,call\n", strings.Replace(header, "width", "within", 1)} {
		repository(t, map[string]string{"testdata/published/a.csv": h})
		record(t, func(tb testing.TB) { unitstest.Published(tb, "a.csv", nil, nil) }).expect(t, "a.csv: columns are")
	}
}

func TestPublishedReport(t *testing.T) {
	rows := right + wrong +
		"C,drop,current=20 A; loop=0.18 ohm,drop=3.65 V,tolerance,1.5 %,chart,Book,memory,\n" +
		"D,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,tolerance,1.5 %,chart,Other book,read,\n" +
		"E,drop,current=20 A; loop=0.18 ohm,drop=3.50 V; percent=30 %,measured,3 %,bench,Other book,read,\n" +
		"F,drop,current=20 A; loop=0.18 ohm,drop=3.6 V,digits,,,Our arithmetic,derived,\n" +
		"G,drop,current=20 A; loop=0.18 ohm,drop=3.6 V,digits,,,Rule of thumb,common practice,\n" +
		"H,warm,air=25 °C,metal=36 °C,measured,1.5 K,bench,Book,read,\n" +
		"I,drop,current=0 A; loop=1 ohm,drop=0.0 V,measured,1 V,bench,Book,read,\n" +
		// Second copies, one of them from memory, one derived, and what is none.
		"J,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,,Book,read,second copy of the table in the code\n" +
		"K,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,,Book,memory,second copy of the table in the code\n" +
		"L,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,,Book,derived,second copy of the table in the code\n" +
		"M,drop,current=20 A; loop=0.18 ohm,drop=3.60 V,digits,,,Book,read,not a second copy\n" +
		"N,drop,current=20 A; loop=0.18 ohm,drop=3.70 V,digits,,,Book,read,second copy with a misprint\n"
	report, r := published(t, rows, inventedCalls("drop", "warm"), map[string]string{"B": "misprint", "N": "misprint"})
	r.expect(t, "")
	want := unitstest.Report{
		File:        "invented.csv",
		Kinds:       map[string]int{"digits": 2, "tolerance": 1, "measured": 3}, // A, M; D; E, H, I
		Copies:      map[string]int{"digits": 1},                                // J
		Memory:      map[string]int{"digits": 1, "tolerance": 1},                // K; C
		Unprinted:   map[string]int{"digits": 3},                                // F, G, L
		Sources:     map[string]int{"Book": 10, "Other book": 2, "Our arithmetic": 1, "Rule of thumb": 1},
		Provenances: map[string]int{"read": 9, "memory": 2, "derived": 2, "common practice": 1},
		Relaxed:     []string{"C", "D", "E", "H", "I"},
		Needless:    []string{"D", "I"},
		Excused:     []string{"B", "N"},
		Errors: []string{
			"E drop: 3.6 V, printed 3.50 V, 2.9 % of 3 % allowed",
			"E percent: 30 %, printed 30 %, 0 % of 3 % allowed",
			"H metal: 35 °C, printed 36 °C, 1 °C of 1.5 K allowed",
			"I drop: 0 V, printed 0.0 V, 0 V of 1 V allowed",
		},
	}
	if diff := cmp.Diff(want, report); diff != "" {
		t.Errorf("report (- want):\n%s", diff)
	}
	const text = `invented.csv: 14 rows
  from print: 2 digits; 3 measured; 1 tolerance
  second transcription of a table: 1 digits
  from memory, pins a transcription only: 1 digits; 1 tolerance
  derived or common practice, no check against print: 3 digits
  excused: B, N
  relaxed from digits: 5, of which 2 hold to their digits all the same: D, I
  by provenance: 1 common practice; 2 derived; 2 memory; 9 read
  by source: 10 Book
    2 Other book
    1 Our arithmetic
    1 Rule of thumb
  measured: E drop: 3.6 V, printed 3.50 V, 2.9 % of 3 % allowed
    E percent: 30 %, printed 30 %, 0 % of 3 % allowed
    H metal: 35 °C, printed 36 °C, 1 °C of 1.5 K allowed
    I drop: 0 V, printed 0.0 V, 0 V of 1 V allowed`
	if diff := cmp.Diff(text, report.String()); diff != "" {
		t.Errorf("report (- want):\n%s", diff)
	}
	if len(r.logs) != 1 || r.logs[0] != text {
		t.Errorf("logs %q", r.logs)
	}
}
