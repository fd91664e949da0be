package protection

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// cores are the kinds of insulation that have a factor.
var cores = []string{"PVC 70 °C core", "PVC 90 °C core", "XLPE 90 °C core", "rubber 60 °C core", "rubber 85 °C core", "silicone 180 °C core"}

// parseCore reads the name of a kind of insulation.
func parseCore(s string) (wire.Core, error) {
	var c wire.Core
	err := c.UnmarshalText([]byte(s))
	return c, err
}

// borne says how long a conductor bears a short, or that it is
// longer than the method reaches.
func borne(w wire.Withstand) string {
	longest, ok := w.Longest.Get()
	if !ok {
		return "more than 5 s"
	}
	seconds := units.In(longest, units.Second)
	return units.Significant(seconds, 3) + " s"
}

var theSlow = weave.Worked{
	Name:  "slow",
	Title: "The same lamp behind a fuse that opens, but late",
	Question: "Somebody puts a {{fuse}} fuse at the head of that {{size}}, {{one_way}} to the end. By its curve it needs {{opens}} for the short " +
		"there. Cross-linked insulation: {{thermoset}}. Does the wire outlast it?",
	Inputs: []weave.Input{
		{Name: "fuse", Label: "rating of the fuse", Default: "60 A", Unit: "A", Low: "1 A", High: "500 A"},
		{Name: "size", Label: "conductor", Default: "16 AWG"},
		{Name: "one_way", Label: "length, one way", Default: "15 ft", Unit: "ft", Low: "1 ft", High: "100 ft"},
		{Name: "opens", Label: "time by the curve of the fuse", Default: "4 s", Unit: "s", Low: "0.01 s", High: "5 s"},
		{Name: "thermoset", Label: "cross-linked insulation", Default: "no", Choices: []string{"no", "yes"}},
		voltageInput, bankInput,
	},
	Solve:   solveSlow,
	Helpers: []string{"borne"},
}

func solveSlow(in *weave.Inputs) (weave.Answer, error) {
	fuse := weave.In[units.Current](in, "fuse")
	opens := weave.In[units.Elapsed](in, "opens")
	p, err := wire.Protect(wire.Circuit{
		Installation: wire.Installation{
			Rules:      wire.RVLowVoltage,
			Size:       weave.Parsed(in, "size", wire.ParseSize),
			Insulation: wire.Insulation105,
		},
		Load:   1 * units.Ampere, // not what is asked here
		Device: units.Some(fuse),
		Fault: units.Some(wire.FaultSource{
			Voltage:    weave.In[units.Voltage](in, "voltage"),
			Resistance: weave.In[units.Resistance](in, "bank"),
		}),
		OneWay:    weave.In[units.Length](in, "one_way"),
		Opens:     units.Some(opens),
		Thermoset: weave.Text(in, "thermoset") == "yes",
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "The short is {{short}}, {{times}} times the " +
			"rating. In that time it lets {{let}} through; " +
			"the conductor bears {{bears}}, which is {{borne}} " +
			"of this current. {{limit}} is the most that this " +
			"wire may have.",
		Values: []weave.Value{
			weave.Show("short", p.AtEnd.Current, "A", 3),
			weave.Show("times",
				units.RatioOf(p.AtEnd.Current, fuse), "1", 2),
			weave.Show("let", p.Heated.Let, "A²s", 3),
			weave.Show("bears", p.Heated.Bears, "A²s", 3),
			weave.Say("borne", borne(p.Heated)),
			weave.Show("limit", p.Limit, "A", 3),
		},
		Working:  p.Heated.Working(),
		Findings: p.Findings(),
	}, nil
}

var theWithstand = weave.Worked{
	Name:  "withstand",
	Title: "What a battery short does before the fuse has opened",
	Question: "A short of {{current}} flows in {{size}} copper ({{core}}), and the device needs {{opens}}. Is the " +
		"conductor still one afterwards, and which area would be enough?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current of the short", Default: "2.5 kA", Unit: "A", Low: "50 A", High: "20 kA"},
		{Name: "size", Label: "conductor", Default: "8 AWG"},
		{Name: "core", Label: "insulation", Default: "PVC 70 °C core", Choices: cores},
		{Name: "opens", Label: "time until the device opens", Default: "0.2 s", Unit: "s", Low: "0.001 s", High: "5 s"},
	},
	Solve:   solveWithstand,
	Helpers: []string{"parseCore", "borne"},
}

func solveWithstand(in *weave.Inputs) (weave.Answer, error) {
	opens := weave.In[units.Elapsed](in, "opens")
	w, err := wire.Adiabatic(wire.ShortTime{
		Size:    weave.Parsed(in, "size", wire.ParseSize),
		Core:    weave.Parsed(in, "core", parseCore),
		Current: weave.In[units.Current](in, "current"),
		Time:    units.Some(opens),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{let}} go through it, and it bears {{bears}}. " +
			"It bears this current for {{borne}}; for the " +
			"time that the device needs, {{area}} would be " +
			"enough, where this one has {{has}}.",
		Values: []weave.Value{
			weave.Show("let", w.Let, "kA²s", 3),
			weave.Show("bears", w.Bears, "kA²s", 3),
			weave.Say("borne", borne(w)),
			weave.Show("area", w.MinArea, "mm²", 3),
			weave.Show("has", w.Area, "mm²", 3),
		},
		Working:  w.Working(),
		Findings: w.Findings(),
	}, nil
}

var thePath = weave.Worked{
	Name:  "path",
	Title: "The weakest part of the path",
	Question: "An inverter takes {{load}} behind a {{fuse}} fuse. The cable may carry {{cable}}; on the way are a battery switch of {{switch}}, a bus " +
		"bar of {{bus}} and a shunt of {{shunt}}. What may the path carry?",
	Inputs: []weave.Input{
		{Name: "load", Label: "greatest current of the load", Default: "216.5 A", Unit: "A", Low: "1 A", High: "500 A"},
		{Name: "fuse", Label: "rating of the fuse", Default: "300 A", Unit: "A", Low: "5 A", High: "500 A"},
		{Name: "cable", Label: "ampacity of the cable", Default: "330 A", Unit: "A", Low: "5 A", High: "500 A"},
		{Name: "switch", Label: "continuous rating of the switch", Default: "100 A", Unit: "A", Low: "5 A", High: "500 A"},
		{Name: "bus", Label: "rating of the bus bar", Default: "250 A", Unit: "A", Low: "5 A", High: "600 A"},
		{Name: "shunt", Label: "rating of the shunt", Default: "500 A", Unit: "A", Low: "5 A", High: "1000 A"},
	},
	Solve: solvePath,
}

func solvePath(in *weave.Inputs) (weave.Answer, error) {
	rating := func(name string) units.Current {
		return weave.In[units.Current](in, name)
	}
	load, fuse := rating("load"), rating("fuse")
	parts := []wire.Part{
		{Name: "cable", Rating: rating("cable")},
		{Name: "switch", Rating: rating("switch")},
		{Name: "bus bar", Rating: rating("bus")},
		{Name: "shunt", Rating: rating("shunt")},
	}
	p, err := wire.WeakestPart(load, units.Some(fuse), parts)
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "What its {{weak}} bears: {{bears}}. The load is " +
			"{{part}} of that, and the fuse {{fuse_part}}. It " +
			"is the least rating that counts, not the one that " +
			"was paid most for.",
		Values: []weave.Value{
			weave.Say("weak", p.Weak.Name),
			weave.Show("bears", p.Weak.Rating, "A", 3),
			weave.Show("part",
				units.RatioOf(load, p.Weak.Rating), "%", 3),
			weave.Show("fuse_part",
				units.RatioOf(fuse, p.Weak.Rating), "%", 3),
		},
		Working:  p.Working(),
		Findings: p.Findings(),
	}, nil
}
