package wire_test

import (
	"encoding"
	"errors"
	"math"
	"testing"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// harm orders verdicts by what a claim would do if believed.
func harm(v working.Verdict) int {
	switch v {
	case working.Agree, working.AgreeConservative:
		return 0
	case working.NotStated:
		return 1
	case working.Disagree:
		return 2
	}
	return 3
}

// TestCheckSaferIsNeverWorse makes one claim safer step by step: it is never judged
// worse, and neither is the whole. The first step is wrong, the last is not.
func TestCheckSaferIsNeverWorse(t *testing.T) {
	for _, c := range []struct {
		what  string
		kind  wire.ClaimKind
		base  func() wire.Quote
		steps []string // the safer the later
		put   func(*wire.Quote, units.Printed)
	}{
		{"more drop", wire.ClaimDrop, quotedCable, []string{"0.02 V", "0.09 V", "0.16 V", "0.171 V", "0.18 V", "0.187 V", "0.19 V", "0.4 V", "2 V"},
			func(q *wire.Quote, p units.Printed) { q.Drop = p }},
		{"more per cent", wire.ClaimPercent, quotedCable, []string{"0.2 %", "1.2 %", "1.43 %", "1.5 %", "1.6 %", "4 %", "30 %"},
			func(q *wire.Quote, p units.Printed) { q.Percent = p }},
		{"less ampacity", wire.ClaimAmpacity, quotedCable, []string{"500 A", "347 A", "346 A", "330 A", "300 A", "200 A", "1 A"},
			func(q *wire.Quote, p units.Printed) { q.Ampacity = p }},
		{"more current", wire.ClaimCurrent, quotedCable, []string{"100 A", "170 A", "180 A", "185 A", "195 A", "250 A"},
			func(q *wire.Quote, p units.Printed) { q.Current = p }},
		{"a smaller fuse that carries the load", wire.ClaimDevice, quotedCable, []string{"500 A", "331 A", "330 A", "300 A", "250 A", "232 A"},
			func(q *wire.Quote, p units.Printed) { q.Device = p }},
		{"a fuse that breaks more", wire.ClaimInterrupting, quotedCable, []string{"100 A", "5700 A", "5800 A", "10 kA", "100 kA"},
			func(q *wire.Quote, p units.Printed) { q.Interrupting = p }},
		{"a fuse nearer the battery", wire.ClaimPlace, quotedCable, []string{"60 in", "19 in", "18 in", "7 in", "0 in"},
			func(q *wire.Quote, p units.Printed) { q.FromSource = p }},
	} {
		before, whole := 99, 99
		for i, text := range c.steps {
			q := c.base()
			c.put(&q, stated(text))
			got := mustCheck(t, q)
			now, all := harm(lineOf(got, c.kind).Verdict), harm(got.Verdict())
			if now > before || all > whole {
				t.Errorf("%s, %s: %v after a claim less safe", c.what, text, lineOf(got, c.kind))
			}
			if i == 0 && now < 2 || i == len(c.steps)-1 && (now > 0 || all > 0) {
				t.Errorf("%s, %s: %v; the whole is %v", c.what, text, lineOf(got, c.kind), got.Verdict())
			}
			before, whole = now, all
		}
	}
}

// TestCheckLargerIsNeverWorse: a thicker conductor is never judged worse on its size.
func TestCheckLargerIsNeverWorse(t *testing.T) {
	before := 99
	for _, size := range wire.Gauges()[1:16] {
		q := quotedCable()
		q.Size, q.Drop, q.Percent, q.Ampacity = size, units.Printed{}, units.Printed{}, units.Printed{}
		l := lineOf(mustCheck(t, q), wire.ClaimSize)
		if now := harm(l.Verdict); now > before {
			t.Errorf("%v after a thinner one", l)
		} else {
			before = now
		}
		want := working.AgreeConservative
		switch size.Compare(wire.Aught(1)) {
		case 0:
			want = working.Agree
		case -1:
			want = working.Disagree
		}
		if l.Verdict != want && !(want == working.Disagree && l.Verdict == working.Unsafe) {
			t.Errorf("%v, want %v", l, want)
		}
	}
	if before != 0 {
		t.Errorf("the thickest is not enough: %d", before)
	}
}

func TestCheckLaws(t *testing.T) {
	verdictOf := func(change func(*wire.Quote)) wire.Checked {
		q := quotedCable()
		change(&q)
		return mustCheck(t, q)
	}
	base := verdictOf(func(*wire.Quote) {})
	laws(t, map[string]func() bool{
		"twice the length of both conductors is the length one way": func() bool {
			c := verdictOf(func(q *wire.Quote) { q.Length, q.LengthIs = stated("10 ft"), wire.LengthThereAndBack })
			return equal(c.Voltage, base.Voltage) && c.Verdict() == base.Verdict()
		},
		"a unit is a spelling": func() bool {
			c := verdictOf(func(q *wire.Quote) {
				q.Drop, q.Device, q.Length, q.FromSource = stated("180 mV"), stated("0.25 kA"), stated("60 in"), stated("0 m")
			})
			return c.Verdict() == base.Verdict() && equal(c.Voltage, base.Voltage) && c.Circuit.Device == base.Circuit.Device
		},
		"the drop is that of VoltageDrop": func() bool {
			d := must[wire.Drop](t)(wire.VoltageDrop(base.Drop.Run))
			return d == base.Drop && d.Voltage == base.Voltage
		},
		"without a voltage it drops the same": func() bool {
			c := verdictOf(func(q *wire.Quote) { q.Voltage = units.None[units.Voltage]() })
			return equal(c.Voltage, base.Voltage) && c.Drop == wire.Drop{}
		},
		"the protection is that of Protect": func() bool { return mustProtect(t, base.Circuit) == base.Protection },
		"the load worked out is used, not the one stated": func() bool {
			return verdictOf(func(q *wire.Quote) { q.Current = stated("100 A") }).Voltage == base.Voltage
		},
		"a claim in coarser digits agrees with more": func() bool {
			fine := lineOf(verdictOf(func(q *wire.Quote) { q.Drop = stated("0.20 V") }), wire.ClaimDrop)
			coarse := lineOf(verdictOf(func(q *wire.Quote) { q.Drop = stated("0.2 V") }), wire.ClaimDrop)
			return fine.Verdict == working.AgreeConservative && coarse.Verdict == working.Agree
		},
	})
}

// TestCheckFindingsByRemoval makes one mistake at a time in a quote that has
// none: it is found, and gone when it is mended.
func TestCheckFindingsByRemoval(t *testing.T) {
	if worst, _ := working.Worst(mustCheck(t, quotedCable()).Findings()); worst != working.Caution {
		t.Fatalf("the quote has %v", mustCheck(t, quotedCable()).Findings())
	}
	for _, c := range []struct {
		rule     string
		severity working.Severity
		kind     wire.ClaimKind
		seed     func(*wire.Quote)
	}{
		{"device-above-limit", working.Danger, wire.ClaimDevice, func(q *wire.Quote) { q.Device = stated("400 A") }},
		{"no-device-stated", working.Danger, wire.ClaimDevice, func(q *wire.Quote) { q.Device = units.Printed{} }},
		{"device-far-from-source", working.Danger, wire.ClaimPlace, func(q *wire.Quote) { q.FromSource = stated("19 in") }},
		{"interrupting-too-low", working.Danger, wire.ClaimInterrupting, func(q *wire.Quote) { q.Interrupting = stated("5 kA") }},
		{"load-above-ampacity", working.Danger, wire.ClaimSize, func(q *wire.Quote) { q.Size = wire.AWG(4) }},
		{"run-cannot-carry", working.Danger, wire.ClaimDrop, func(q *wire.Quote) { q.Length = stated("400 ft") }},
		{"parallel-not-counted", working.Danger, wire.ClaimSize, func(q *wire.Quote) { q.Parallel = 2 }},
		{"far-fault-too-weak", working.Danger, wire.ClaimDevice, func(q *wire.Quote) { q.Length = stated("400 ft") }},
		{"device-below-load", working.Caution, wire.ClaimDevice, func(q *wire.Quote) { q.Device = stated("200 A") }},
		{"drop-above-allowed", working.Caution, wire.ClaimSize, func(q *wire.Quote) { q.Length = stated("11 ft") }},
		{"drop-of-one-conductor", working.Caution, wire.ClaimDrop, func(q *wire.Quote) { q.Drop = stated("0.09 V") }},
		{"conductor-not-judged", working.Caution, wire.ClaimSize, func(q *wire.Quote) {
			q.Size, q.Basis = wire.Metric(70*units.SquareMillimetre), units.None[wire.Basis]()
		}},
		{"no-allowed-drop", working.Note, wire.ClaimSize, func(q *wire.Quote) { q.Allowed = units.None[units.Ratio]() }},
		{"fault-not-given", working.Note, wire.ClaimInterrupting, func(q *wire.Quote) { q.Fault = units.None[wire.FaultSource]() }},
		{"interrupting-not-stated", working.Note, wire.ClaimInterrupting, func(q *wire.Quote) { q.Interrupting = units.Printed{} }},
		{"place-not-stated", working.Note, wire.ClaimPlace, func(q *wire.Quote) { q.FromSource = units.Printed{} }},
	} {
		if has(mustCheck(t, quotedCable()).Findings(), c.rule) {
			t.Errorf("%s without the mistake", c.rule)
		}
		q := quotedCable()
		c.seed(&q)
		got := mustCheck(t, q)
		if !hasSeverity(got.Findings(), c.rule, c.severity) {
			t.Errorf("seeded %s: found %v", c.rule, rules(got.Findings()))
		}
		saysAll(t, got.Findings())
		if c.severity == working.Danger && (got.Verdict() != working.Unsafe || lineOf(got, c.kind).Verdict != working.Unsafe) {
			t.Errorf("%s: %v, %v", c.rule, got.Verdict(), lineOf(got, c.kind))
		}
	}
}

// TestCheckWithoutARow: a conductor that the rule set does not know is not judged
// on heat, but on all that needs no table.
func TestCheckWithoutARow(t *testing.T) {
	metric := func(change func(*wire.Quote)) wire.Checked {
		q := quotedCable()
		q.Size, q.Basis = wire.Metric(70*units.SquareMillimetre), units.None[wire.Basis]()
		q.Ampacity = units.Printed{}
		change(&q)
		return mustCheck(t, q)
	}
	for _, c := range []struct {
		what   string
		change func(*wire.Quote)
		all    working.Verdict
		rule   string
	}{
		{"as it is", func(*wire.Quote) {}, working.NotStated, "conductor-not-judged"},
		{"no fuse", func(q *wire.Quote) { q.Device = units.Printed{} }, working.Unsafe, "no-device-stated"},
		{"small fuse", func(q *wire.Quote) { q.Device = stated("150 A") }, working.Disagree, "device-below-load"},
		{"far fuse", func(q *wire.Quote) { q.FromSource = stated("50 in") }, working.Unsafe, "device-far-from-source"},
		{"weak fuse", func(q *wire.Quote) { q.Interrupting = stated("2 kA") }, working.Unsafe, "interrupting-too-low"},
	} {
		got := metric(c.change)
		if got.Verdict() != c.all || !has(got.Findings(), c.rule) {
			t.Errorf("%s: %v, found %v", c.what, got.Verdict(), rules(got.Findings()))
		}
		saysAll(t, got.Findings())
	}
	if l := lineOf(metric(func(*wire.Quote) {}), wire.ClaimDrop); l.Verdict == working.NotStated {
		t.Errorf("the drop needs no table: %v", l)
	}
	aluminium := mustCheck(t, wire.Quote{Rules: wire.RVLowVoltage, Size: wire.AWG(8), Metal: units.Some(wire.Aluminium), DeviceElsewhere: true})
	if !has(aluminium.Findings(), "conductor-not-judged") || has(aluminium.Findings(), "no-device-stated") {
		t.Errorf("found %v", rules(aluminium.Findings()))
	}
}

func TestCheckBadFields(t *testing.T) {
	spoilt := func(field string, spoil func(*wire.Quote)) {
		t.Helper()
		q := quotedCable()
		spoil(&q)
		c, err := wire.Check(q)
		wantZero(t, c, err, "wire.Check", field)
	}
	for _, x := range bad {
		spoilt("Load", func(q *wire.Quote) { q.Load = units.Some(units.Current(x)) })
		spoilt("Voltage", func(q *wire.Quote) { q.Voltage = units.Some(units.Voltage(x)) })
		spoilt("Allowed", func(q *wire.Quote) { q.Allowed = units.Some(units.Ratio(x)) })
		spoilt("PowerFactor", func(q *wire.Quote) { q.PowerFactor = units.Some(units.Ratio(x)) })
		spoilt("Voltage", func(q *wire.Quote) {
			q.Fault = units.Some(wire.FaultSource{Voltage: units.Voltage(x), Resistance: 1})
			q.Length, q.FromSource = units.Printed{}, units.Printed{}
		})
		spoilt("Chassis", func(q *wire.Quote) { q.Chassis = units.Some(units.Resistance(min(x, -1))) })
		spoilt("Contacts", func(q *wire.Quote) { q.Contacts = units.Some(units.Resistance(min(x, -1))) })
		spoilt("Opens", func(q *wire.Quote) { q.Opens = units.Some(units.Elapsed(x)) })
		spoilt("Resistance", func(q *wire.Quote) {
			q.Fault = units.Some(wire.FaultSource{Voltage: 13, Resistance: units.Resistance(x)})
		})
	}
	for field, put := range map[string]func(*wire.Quote, units.Printed){
		"Current": func(q *wire.Quote, p units.Printed) { q.Current = p }, "Ampacity": func(q *wire.Quote, p units.Printed) { q.Ampacity = p },
		"Device": func(q *wire.Quote, p units.Printed) { q.Device = p }, "Interrupting": func(q *wire.Quote, p units.Printed) { q.Interrupting = p },
	} {
		for _, text := range []string{"0 A", "-1 A"} {
			spoilt(field, func(q *wire.Quote) { put(q, stated(text)) })
		}
		q := quotedCable()
		put(&q, stated("5 V"))
		var e *units.ParseError
		if c, err := wire.Check(q); !errors.As(err, &e) || c != (wire.Checked{}) {
			t.Errorf("%s of 5 V: %v", field, err)
		}
	}
	spoilt("Length", func(q *wire.Quote) { q.Length = stated("0 ft") })
	spoilt("Drop", func(q *wire.Quote) { q.Drop = stated("-0.1 V") })
	spoilt("Percent", func(q *wire.Quote) { q.Percent = stated("-1 %") })
	spoilt("FromSource", func(q *wire.Quote) { q.FromSource = stated("-1 in") })
	spoilt("FromSource", func(q *wire.Quote) { q.FromSource = stated("6 ft") }) // beyond the end of the run
	spoilt("FromSource", func(q *wire.Quote) { q.FromSource, q.Fault = stated("6 ft"), units.None[wire.FaultSource]() })
	spoilt("Needed", func(q *wire.Quote) { // 125 % of it is no number
		q.Load, q.Drop, q.Percent, q.Length, q.FromSource = units.Some(units.Current(1.7e308)), units.Printed{}, units.Printed{}, units.Printed{}, units.Printed{}
	})
	spoilt("Needed", func(q *wire.Quote) {
		*q = wire.Quote{Rules: wire.NEC2023, Load: units.Some(units.Current(1.7e308)), Continuous: true}
	})
	spoilt("Rules", func(q *wire.Quote) { q.Rules = 0 })
	spoilt("LengthIs", func(q *wire.Quote) { q.LengthIs = 3 })
	spoilt("Fault.Voltage", func(q *wire.Quote) { // a boat without a voltage is one below 50 V
		q.Rules, q.Voltage = wire.Boat33CFR, units.None[units.Voltage]()
		q.Fault = units.Some(wire.FaultSource{Voltage: 52, Resistance: 0.003})
	})
	spoilt("LengthIs", func(q *wire.Quote) { q.LengthIs, q.Chassis = wire.LengthThereAndBack, units.Some(units.Milliohm) })
	spoilt("Chassis", func(q *wire.Quote) { q.Alternating, q.Chassis = true, units.Some(units.Milliohm) })
	spoilt("Contacts", func(q *wire.Quote) { q.Alternating, q.Contacts = true, units.Some(units.Milliohm) })
	spoilt("EngineSpace", func(q *wire.Quote) { q.EngineSpace = true }) // not a boat
	spoilt("Metal", func(q *wire.Quote) { q.Metal = units.Some(wire.Metal(3)) })
	spoilt("Kind", func(q *wire.Quote) { q.Kind = 3 })
	spoilt("Insulation", func(q *wire.Quote) { q.Insulation = 99 })
	spoilt("Terminals", func(q *wire.Quote) { q.Terminals = wire.Insulation75 }) // RV rules have none
	spoilt("Ambient", func(q *wire.Quote) { q.Ambient = units.Celsius(300) })
	spoilt("Conductors", func(q *wire.Quote) { q.Conductors = 1001 })
	spoilt("Parallel", func(q *wire.Quote) { q.Parallel = 101 })
	spoilt("Basis", func(q *wire.Quote) { q.Basis = units.Some(wire.Basis(99)) })
	spoilt("Temperature", func(q *wire.Quote) { q.Temperature = units.Celsius(200) })
	spoilt("Voltage", func(q *wire.Quote) { q.Voltage = units.Some(120 * units.Volt) }) // RVLowVoltage ends at 50 V
	spoilt("DeviceElsewhere", func(q *wire.Quote) { q.DeviceElsewhere = true })
	if _, err := wire.Check(wire.Quote{Rules: wire.RVLowVoltage, Percent: stated("2.9")}); err == nil {
		t.Error("a bare 2.9 is taken for a part of one")
	}
}

// TestCheckTexts: the quote reads back from JSON, with what is not stated left
// out.
func TestCheckTexts(t *testing.T) {
	if text := roundTrip(t, wire.Quote{Rules: wire.RVLowVoltage}); text != `{"Rules":"RV low voltage"}` {
		t.Error(text)
	}
	for _, q := range []wire.Quote{quotedCable(), quotedFeeder(), quotedBranch(), acQuote()} {
		roundTrip(t, q)
	}
	checkWords(t, func(b *wire.LengthBasis) encoding.TextUnmarshaler { return b }, "not said", "one way", "there and back")
	checkWords(t, func(k *wire.ClaimKind) encoding.TextUnmarshaler { return k }, "current", "drop in volts", "drop in per cent",
		"ampacity", "size", "device", "place of the device", "interrupting rating")
}

// plainCheck is the drop, the next rating and a width of 5 % in raw numbers.
func plainCheck(amperes, feet, ohmsPerKilofoot, claim, device, limit float64) (agrees, fits bool) {
	drop := amperes * ohmsPerKilofoot / 1000 * 2 * feet
	return math.Abs(claim-drop) <= 0.05*drop, amperes*1.25 <= device && device <= limit
}

func BenchmarkCheck(b *testing.B) {
	q := quotedCable()
	b.Run("check", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := wire.Check(q); err != nil {
				b.Fatal(err)
			}
		}
	})
	c := mustCheck(b, q)
	b.Run("verdict", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if c.Verdict() != working.AgreeConservative {
				b.Fatal(c.Verdict())
			}
		}
	})
	b.Run("plain", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if agrees, fits := plainCheck(185.2, 5, 0.0967, 0.18, 250, 330); !agrees || !fits {
				b.Fatal(agrees, fits)
			}
		}
	})
}
