package voltagedrop

import (
	"time"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

const aDay = weave.Prose(`## What a cable takes in a day

The drop is a matter of the moment; the battery pays for all of them. The heat of each moment goes with the square of
its current, so the hours with much current make nearly all of it. A mean current hides that, since the mean
of the squares is above the square of the mean:`)

var daySymbols = weave.Formula{
	Equations: []string{"E = R_loop * pow(I_rms, 2) * t"},
	Where: []weave.Symbol{
		{Name: "E", Unit: "Wh", What: "energy that the conductors take"},
		{Name: "R_loop", Unit: "Ω", What: "resistance there and back"},
		{Name: "I_rms", Unit: "A", What: "root of the mean of the squares of the currents"},
		{Name: "t", Unit: "h", What: "time that the load covers"},
	},
}

var theDay = weave.Worked{
	Name:  "day",
	Title: "A day of a feeder",
	Question: "A feeder of {{one_way}} of {{size}} carries {{base}} all day, and {{peak}} for {{hours}} hours of the evening, from {{source}}. " +
		"What do the conductors take in a day?",
	Inputs: []weave.Input{
		{Name: "base", Label: "current of a quiet hour", Default: "3 A", Unit: "A", Low: "0 A", High: "30 A"},
		{Name: "peak", Label: "current of an evening hour", Default: "28 A", Unit: "A", Low: "1 A", High: "60 A"},
		{Name: "hours", Label: "hours of the evening", Default: "4", Low: "1", High: "24"},
		{Name: "one_way", Label: "length, one way", Default: "18 ft", Unit: "ft", Low: "1 ft", High: "60 ft"},
		{Name: "size", Label: "conductor", Default: "8 AWG"},
		sourceInput,
	},
	Solve:   solveDay,
	Helpers: []string{"dayOf"},
}

func solveDay(in *weave.Inputs) (weave.Answer, error) {
	run := wire.Run{
		OneWay: weave.In[units.Length](in, "one_way"),
		Conductor: wire.Conductor{
			Size: weave.Parsed(in, "size", wire.ParseSize),
		},
		Source: weave.In[units.Voltage](in, "source"),
	}
	loss, err := wire.EnergyLost(run, dayOf(
		weave.In[units.Current](in, "base"),
		weave.In[units.Current](in, "peak"),
		weave.Count(in, "hours")))
	if err != nil {
		return weave.Answer{}, err
	}
	byMean := loss.Mean.Heating(loss.Resistance).For(loss.Time)
	return weave.Answer{
		Text: "They take {{lost}}, {{fraction}} of the {{from}} " +
			"that the battery gives. Worked from the mean " +
			"current, {{mean}}, it would seem to be {{by_mean}}; " +
			"what makes the heat is {{rms}}.",
		Values: []weave.Value{
			weave.Show("lost", loss.Lost, "Wh", 3),
			weave.Show("fraction", loss.Fraction, "%", 3),
			weave.Show("from", loss.FromSource, "Wh", 4),
			weave.Show("mean", loss.Mean, "A", 3),
			weave.Show("by_mean", byMean, "Wh", 3),
			weave.Show("rms", loss.RMS, "A", 3),
		},
		Working:  loss.Working(),
		Findings: loss.Findings(),
	}, nil
}

// dayOf returns the hourly currents of a day whose last hours are
// the busy ones.
func dayOf(
	base, peak units.Current, hours int,
) units.Series[units.Current] {
	day := units.Series[units.Current]{
		Start:  newYear(),
		Step:   time.Hour,
		Values: make([]units.Current, 24),
	}
	for i := range day.Values {
		day.Values[i] = base
		if i >= len(day.Values)-hours {
			day.Values[i] = peak
		}
	}
	return day
}

var theCharge = weave.Worked{
	Name:  "charge",
	Title: "The same charge, slow and fast",
	Question: "A battery is charged through {{one_way}} of {{size}}: {{slow}} for 24 hours, or the same charge at {{fast}} in less time. " +
		"The charger holds {{source}}. What do the conductors take?",
	Inputs: []weave.Input{
		{Name: "slow", Label: "slow current", Default: "10 A", Unit: "A", Low: "1 A", High: "30 A"},
		{Name: "fast", Label: "fast current", Default: "30 A", Unit: "A", Low: "10 A", High: "60 A"},
		{Name: "one_way", Label: "length, one way", Default: "18 ft", Unit: "ft", Low: "1 ft", High: "60 ft"},
		{Name: "size", Label: "conductor", Default: "8 AWG"},
		{Name: "source", Label: "voltage of the charger", Default: "14.2 V", Unit: "V", Low: "12 V", High: "60 V"},
	},
	Solve:   solveCharge,
	Helpers: []string{"steadily"},
}

func solveCharge(in *weave.Inputs) (weave.Answer, error) {
	run := wire.Run{
		OneWay: weave.In[units.Length](in, "one_way"),
		Conductor: wire.Conductor{
			Size: weave.Parsed(in, "size", wire.ParseSize),
		},
		Source: weave.In[units.Voltage](in, "source"),
	}
	slow := weave.In[units.Current](in, "slow")
	fast := weave.In[units.Current](in, "fast")
	charge := slow.For(24 * units.Hour)
	slowly, err := steadily(run, slow, charge)
	if err != nil {
		return weave.Answer{}, err
	}
	quickly, err := steadily(run, fast, charge)
	if err != nil {
		return weave.Answer{}, err
	}
	times := units.RatioOf(quickly.Lost, slowly.Lost)
	return weave.Answer{
		Text: "{{charge}} take {{slowly}} at the slow current " +
			"and {{quickly}} in {{time}} at the fast one: " +
			"{{times}} times as much for the same charge.",
		Values: []weave.Value{
			weave.Show("charge", charge, "Ah", 3),
			weave.Show("slowly", slowly.Lost, "Wh", 3),
			weave.Show("quickly", quickly.Lost, "Wh", 3),
			weave.Show("time", quickly.Time, "h", 3),
			weave.Show("times", times, "1", 3),
		},
		Working:  quickly.Working(),
		Findings: quickly.Findings(),
	}, nil
}

// steadily returns what the run takes of a charge at one current.
func steadily(
	run wire.Run, i units.Current, charge units.Charge,
) (wire.Loss, error) {
	time, err := charge.Lasts(i).Duration()
	if err != nil {
		return wire.Loss{}, err
	}
	return wire.EnergyLost(run, units.Series[units.Current]{
		Start: newYear(), Step: time, Values: []units.Current{i},
	})
}

// newYear is when the loads begin; any day would do.
func newYear() time.Time {
	return time.Date(2025, 1, 1, 0, 0, 0, 0, time.UTC)
}
