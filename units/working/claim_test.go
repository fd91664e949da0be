package working_test

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
	"example.com/drawbar/units/working"
)

// stated reads a claim's number; empty text is nothing stated.
func stated(t testing.TB, text string) units.Printed {
	t.Helper()
	var p units.Printed
	if err := p.UnmarshalText([]byte(text)); err != nil {
		t.Fatal(err)
	}
	return p
}

func TestJudge(t *testing.T) {
	const fivePercent = "5 % (common practice)"
	danger := []working.Finding{{Severity: working.Caution, Rule: "warm"}, {Severity: working.Danger, Rule: "fire"}, {Severity: working.Danger, Rule: "shock"}}
	caution := danger[:1]
	tests := []struct {
		stated   string
		computed units.Value
		side     working.Side
		findings []working.Finding
		verdict  working.Verdict
		line     string
	}{
		// within 5 % of the computed value, ends included
		{"3.60 V", 3.564 * units.Volt, 0, nil, working.Agree, "agree: stated 3.60 V, computed 3.564 V, 1 % high; rule: " + fivePercent},
		{"105 W", 100 * units.Watt, 0, nil, working.Agree, "agree: stated 105 W, computed 100 W, 5 % high; rule: " + fivePercent},
		{"95 W", 100 * units.Watt, 0, nil, working.Agree, "agree: stated 95 W, computed 100 W, 5 % low; rule: " + fivePercent},
		{"100 W", 100 * units.Watt, 0, nil, working.Agree, "agree: stated 100 W, computed 100 W, no difference; rule: " + fivePercent},
		{"0.100 kW", 100 * units.Watt, 0, nil, working.Agree, "agree: stated 0.100 kW, computed 0.1 kW, no difference; rule: " + fivePercent},

		// beyond it
		{"105.1 W", 100 * units.Watt, 0, nil, working.Disagree, "disagree: stated 105.1 W, computed 100 W, 5.1 % high; rule: " + fivePercent},
		{"94.9 W", 100 * units.Watt, 0, nil, working.Disagree, "disagree: stated 94.9 W, computed 100 W, 5.1 % low; rule: " + fivePercent},
		{"2.0 %", 4.684 * units.Percent, 0, nil, working.Disagree, "disagree: stated 2.0 %, computed 4.684 %, 57 % low; rule: " + fivePercent},
		{"1000 W", 10 * units.Watt, 0, nil, working.Disagree, "disagree: stated 1000 W, computed 10 W, 9900 % high; rule: as stated to 1 W"},

		// within half of the last stated digit, where that is wider
		{"3 V", 3.5 * units.Volt, 0, nil, working.Agree, "agree: stated 3 V, computed 3.5 V, 14 % low; rule: as stated to 1 V"},
		{"3 V", 2.5 * units.Volt, 0, nil, working.Agree, "agree: stated 3 V, computed 2.5 V, 20 % high; rule: as stated to 1 V"},
		{"3 V", 3.51 * units.Volt, 0, nil, working.Disagree, "disagree: stated 3 V, computed 3.51 V, 15 % low; rule: as stated to 1 V"},
		{"0.1 V", 0.0501 * units.Volt, 0, nil, working.Agree, "agree: stated 0.1 V, computed 0.0501 V, 100 % high; rule: as stated to 0.1 V"},
		{"1500 W to the nearest 500", 1700 * units.Watt, 0, nil, working.Agree,
			"agree: stated 1500 W to the nearest 500, computed 1700 W, 12 % low; rule: as stated to 500 W"},
		{"0 V", 0.4 * units.Volt, 0, nil, working.Agree, "agree: stated 0 V, computed 0.4 V, 100 % low; rule: as stated to 1 V"},

		// where the two are equally wide, 5 % of 10 V, the digits name it
		{"10 V", 10 * units.Volt, 0, nil, working.Agree, "agree: stated 10 V, computed 10 V, no difference; rule: as stated to 1 V"},

		// the side that errs without harm
		{"120 A", 100 * units.Ampere, working.Higher, nil, working.AgreeConservative, "agree, conservative: stated 120 A, computed 100 A, 20 % high; rule: " + fivePercent},
		{"80 A", 100 * units.Ampere, working.Higher, nil, working.Disagree, "disagree: stated 80 A, computed 100 A, 20 % low; rule: " + fivePercent},
		{"80 A", 100 * units.Ampere, working.Lower, nil, working.AgreeConservative, "agree, conservative: stated 80 A, computed 100 A, 20 % low; rule: " + fivePercent},
		{"120 A", 100 * units.Ampere, working.Lower, nil, working.Disagree, "disagree: stated 120 A, computed 100 A, 20 % high; rule: " + fivePercent},
		{"105 A", 100 * units.Ampere, working.Lower, nil, working.Agree, "agree: stated 105 A, computed 100 A, 5 % high; rule: " + fivePercent},

		// negative values: high and low are on the number line
		{"-11.0 A", -10 * units.Ampere, working.Lower, nil, working.AgreeConservative, "agree, conservative: stated -11.0 A, computed -10 A, 10 % low; rule: " + fivePercent},
		{"-10.5 A", -10 * units.Ampere, 0, nil, working.Agree, "agree: stated -10.5 A, computed -10 A, 5 % low; rule: " + fivePercent},
		{"10.0 A", -10 * units.Ampere, 0, nil, working.Disagree, "disagree: stated 10.0 A, computed -10 A, 200 % high; rule: " + fivePercent},

		// zero has no ratio
		{"0.5 A", 0 * units.Ampere, 0, nil, working.Disagree, "disagree: stated 0.5 A, computed 0 A, 0.5 A high; rule: as stated to 0.1 A"},
		{"0.05 A", 0 * units.Ampere, 0, nil, working.Disagree, "disagree: stated 0.05 A, computed 0 A, 0.05 A high; rule: as stated to 0.01 A"},
		{"1 A", 1e-320 * units.Ampere, 0, nil, working.Disagree, "disagree: stated 1 A, computed 1e-320 A, 1 A high; rule: as stated to 1 A"},
		{"0 A", 0 * units.Ampere, 0, nil, working.Agree, "agree: stated 0 A, computed 0 A, no difference; rule: as stated to 1 A"},

		// temperatures: their zero is arbitrary, so the digits alone decide
		{"25 °C", units.Celsius(25.5), 0, nil, working.Agree, "agree: stated 25 °C, computed 25.5 °C, 0.5 °C low; rule: as stated to 1 °C"},
		{"25 °C", units.Celsius(26), 0, nil, working.Disagree, "disagree: stated 25 °C, computed 26 °C, 1 °C low; rule: as stated to 1 °C"},
		{"77 °F", units.Celsius(25), 0, nil, working.Agree, "agree: stated 77 °F, computed 77 °F, no difference; rule: as stated to 1 °F"},
		{"30 °C", units.Celsius(26), working.Higher, nil, working.AgreeConservative, "agree, conservative: stated 30 °C, computed 26 °C, 4 °C high; rule: as stated to 1 °C"},

		// nothing to judge, or to judge by
		{"", 4.684 * units.Percent, 0, nil, working.NotStated, "not stated: computed 4.684 %"},
		{"2.0 %", nil, 0, nil, working.NotStated, "not stated: nothing computed to judge 2.0 % by"},
		{"20 °C", units.Temperature{}, 0, nil, working.NotStated, "not stated: nothing computed to judge 20 °C by"},
		{"", nil, 0, nil, working.NotStated, "not stated: nothing stated, nothing computed"},
		{"2.0 %", nil, 0, caution, working.NotStated, "not stated: nothing computed to judge 2.0 % by"},

		// a danger beats all the rest; less does not
		{"100 W", 100 * units.Watt, 0, danger, working.Unsafe, "unsafe by rule fire: stated 100 W, computed 100 W, no difference; rule: " + fivePercent},
		{"120 A", 100 * units.Ampere, working.Higher, danger, working.Unsafe, "unsafe by rule fire: stated 120 A, computed 100 A, 20 % high; rule: " + fivePercent},
		{"80 A", 100 * units.Ampere, working.Higher, danger, working.Unsafe, "unsafe by rule fire: stated 80 A, computed 100 A, 20 % low; rule: " + fivePercent},
		{"", 100 * units.Ampere, 0, danger, working.Unsafe, "unsafe by rule fire: computed 100 A"},
		{"2 A", nil, 0, danger, working.Unsafe, "unsafe by rule fire: nothing computed to judge 2 A by"},
		{"2 A", nil, 0, []working.Finding{{Severity: 9}}, working.Unsafe, "unsafe: nothing computed to judge 2 A by"},
		{"100 W", 100 * units.Watt, 0, caution, working.Agree, "agree: stated 100 W, computed 100 W, no difference; rule: " + fivePercent},
	}
	for _, tt := range tests {
		c := working.Claim{What: "what", Stated: stated(t, tt.stated), Computed: tt.computed, SafeSide: tt.side, Findings: tt.findings}
		j, err := c.Judge()
		if err != nil || j.Verdict != tt.verdict || j.String() != tt.line {
			t.Errorf("%q against %v: %v, %v, want\n%s", tt.stated, tt.computed, j, err, tt.line)
		}
		if j.What != "what" || j.Stated != c.Stated {
			t.Errorf("%q against %v: the judgement has lost the claim: %+v", tt.stated, tt.computed, j)
		}
	}
}

// The numbers of a judgement: off in the unit stated, as a part of the
// computed value, and how wide agreement was.
func TestJudgementNumbers(t *testing.T) {
	for _, tt := range []struct {
		claim working.Claim
		want  working.Judgement
	}{
		{
			working.Claim{Stated: stated(t, "3200 mV"), Computed: 4 * units.Volt, SafeSide: working.Lower},
			working.Judgement{Verdict: working.AgreeConservative, Stated: stated(t, "3200 mV"), Computed: "4000 mV", Unit: "mV",
				Off: units.Some(-800.0), Difference: units.Some(-20 * units.Percent), Width: 200, Rule: "5 % (common practice)"},
		},
		{
			working.Claim{Stated: stated(t, "3 V"), Computed: 3 * units.Volt},
			working.Judgement{Verdict: working.Agree, Stated: stated(t, "3 V"), Computed: "3 V", Unit: "V",
				Off: units.Some(0.0), Difference: units.Some(0 * units.Percent), Width: 0.5, Rule: "as stated to 1 V"},
		},
		{
			working.Claim{Stated: stated(t, "1 V"), Computed: 0 * units.Volt},
			working.Judgement{Verdict: working.Disagree, Stated: stated(t, "1 V"), Computed: "0 V", Unit: "V",
				Off: units.Some(1.0), Width: 0.5, Rule: "as stated to 1 V"},
		},
		{
			working.Claim{Computed: 3 * units.Volt, Unit: "mV"},
			working.Judgement{Computed: "3000 mV", Unit: "mV"},
		},
		{
			working.Claim{Stated: stated(t, "3 V")},
			working.Judgement{Stated: stated(t, "3 V"), Unit: "V"},
		},
	} {
		got, err := tt.claim.Judge()
		if err != nil {
			t.Errorf("%+v: %v", tt.claim, err)
		}
		opts := cmp.Options{unitstest.Near(1e-12), cmp.AllowUnexported(units.Opt[float64]{}, units.Opt[units.Ratio]{}, units.Printed{})}
		if diff := cmp.Diff(tt.want, got, opts); diff != "" {
			t.Errorf("%+v (-want +got):\n%s", tt.claim, diff)
		}
		if got != got { // comparable
			t.Errorf("%+v is not equal to itself", got)
		}
	}
}

// A bare number is in the unit that its column is headed with; the unit is
// never guessed and never silently converted.
func TestClaimUnits(t *testing.T) {
	tests := []struct {
		stated   string
		unit     string
		computed units.Value
		line     string // or the start of the error
	}{
		{"3.6", "V", 3.6 * units.Volt, "agree: stated 3.6, computed 3.6 V, no difference; rule: 5 % (common practice)"},
		{"3.6 V", "V", 3.6 * units.Volt, "agree: stated 3.6 V, computed 3.6 V, no difference; rule: 5 % (common practice)"},
		{"3.6 volt", "Vdc", 3.6 * units.Volt, "agree: stated 3.6 volt, computed 3.6 V, no difference; rule: 5 % (common practice)"},
		{"16.7", "%", 16.7 * units.Percent, "agree: stated 16.7, computed 16.7 %, no difference; rule: 5 % (common practice)"},
		{"0.80", "", 80 * units.Percent, "agree: stated 0.80, computed 0.8, no difference; rule: 5 % (common practice)"},

		{"3.6 V", "mV", 3.6 * units.Volt, "working.Claim.Judge: 3.6 V is not in mV"},
		{"3.6 A", "", 3.6 * units.Volt, `parsing "A" as a unit of voltage`},
		{"3.6 V", "A", 3.6 * units.Volt, `parsing "A" as a unit of voltage`},
		{"3.6 A", "V", 3.6 * units.Volt, `parsing "A" as a unit of voltage`},
		{"3.6", "", 3.6 * units.Volt, `parsing "" as a unit of voltage`},
		{"16.7", "", 16.7 * units.Percent, `parsing "16.7" as ratio: a number without a unit must not be above 2`},
		{"", "A", 3.6 * units.Volt, `parsing "A" as a unit of voltage`},
	}
	for _, tt := range tests {
		c := working.Claim{Stated: stated(t, tt.stated), Unit: tt.unit, Computed: tt.computed}
		j, err := c.Judge()
		got := j.String()
		if err != nil {
			got = err.Error()
			if !errors.Is(err, units.ErrSyntax) && !errors.Is(err, units.ErrUnit) {
				t.Errorf("%q in %q: %v matches neither units.ErrSyntax nor units.ErrUnit", tt.stated, tt.unit, err)
			}
		}
		if len(got) < len(tt.line) || got[:len(tt.line)] != tt.line {
			t.Errorf("%q in %q against %v: %s, want %s", tt.stated, tt.unit, tt.computed, got, tt.line)
		}
	}
}

// An error gives no verdict, but a danger stays one.
func TestJudgeErrors(t *testing.T) {
	danger := []working.Finding{{Severity: working.Danger, Rule: "fire"}}
	for name, tt := range map[string]struct {
		claim working.Claim
		cause error
	}{
		"NaN":                {working.Claim{Stated: stated(t, "3 V"), Computed: units.Voltage(math.NaN())}, units.ErrRange},
		"NaN, not stated":    {working.Claim{Computed: units.Voltage(math.NaN())}, units.ErrRange},
		"infinite":           {working.Claim{Stated: stated(t, "3 V"), Computed: units.Voltage(math.Inf(-1))}, units.ErrRange},
		"infinitely hot":     {working.Claim{Stated: stated(t, "3 °C"), Computed: units.Celsius(math.Inf(1))}, units.ErrRange},
		"pointer":            {working.Claim{Stated: stated(t, "3 V"), Computed: new(units.Voltage)}, units.ErrRange},
		"nil pointer":        {working.Claim{Computed: (*units.Voltage)(nil)}, units.ErrRange},
		"undefined side":     {working.Claim{Stated: stated(t, "3 V"), Computed: 3 * units.Volt, SafeSide: 3}, units.ErrRange},
		"another quantity":   {working.Claim{Stated: stated(t, "3 A"), Computed: 3 * units.Volt}, units.ErrSyntax},
		"another unit":       {working.Claim{Stated: stated(t, "3 V"), Computed: 3 * units.Volt, Unit: "kV"}, units.ErrUnit},
		"too large to print": {working.Claim{Stated: stated(t, "3 mV"), Computed: units.Voltage(math.MaxFloat64)}, units.ErrRange},
	} {
		j, err := tt.claim.Judge()
		if !errors.Is(err, tt.cause) || j.Verdict != working.NotStated || j.Computed != "" {
			t.Errorf("%s: %+v, %v, want %v", name, j, err, tt.cause)
		}
		tt.claim.Findings = danger
		if j, err = tt.claim.Judge(); !errors.Is(err, tt.cause) || j.Verdict != working.Unsafe || j.Danger != "fire" {
			t.Errorf("%s with a danger: %+v, %v, want unsafe and %v", name, j, err, tt.cause)
		}
	}
}

// No verdict moves when the computed value moves by a part in 1e12, at either
// end of the width and at the value itself.
func TestVerdictsDoNotMove(t *testing.T) {
	for _, tt := range []struct {
		stated   string
		computed float64
		want     working.Verdict
	}{
		{"105 V", 100, working.Agree},
		{"95 V", 100, working.Agree},
		{"3 V", 3.5, working.Agree},
		{"3 V", 2.5, working.Agree},
		{"0.1 V", 0.15, working.Agree},
		{"0.3 V", 0.35, working.Agree},
		{"0 V", 0.5, working.Agree},
		{"0.0 V", -0.05, working.Agree},
		{"3.15 V", 3, working.Agree},
		{"105.001 V", 100, working.Disagree},
		{"3 V", 3.5001, working.Disagree},
	} {
		for _, by := range []float64{0, 1e-12, -1e-12} {
			c := working.Claim{Stated: stated(t, tt.stated), Computed: units.Voltage(tt.computed * (1 + by))}
			if j, err := c.Judge(); err != nil || j.Verdict != tt.want {
				t.Errorf("%s against %v moved by %v: %v, %v, want %v", tt.stated, tt.computed, by, j, err, tt.want)
			}
		}
	}
}
