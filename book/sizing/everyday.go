package sizing

import (
	"strings"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

// Inputs that several examples share.
var (
	efficiencyInput = weave.Input{Name: "efficiency", Label: "efficiency of the inverter", Default: "90 %", Unit: "%", Low: "5 %", High: "100 %"}
	idleInput       = weave.Input{Name: "idle", Label: "own use of the inverter", Default: "20 W", Unit: "W", Low: "0 W", High: "1000 W"}
)

var theLoads = weave.Worked{
	Name:  "loads",
	Title: "What runs together",
	Question: "A microwave takes {{oven}} at its plug with a power factor of {{oven_factor}}, a television and some chargers {{small}} " +
		"with {{small_factor}}. Does an inverter of {{rated}}, {{watts}} of it as watts, carry them together?",
	Inputs: []weave.Input{
		{Name: "rated", Label: "inverter, for hours", Default: "1500 VA", Unit: "VA", Low: "10 VA", High: "100000 VA"},
		{Name: "watts", Label: "part of it as watts", Default: "100 %", Unit: "%", Low: "10 %", High: "100 %"},
		{Name: "oven", Label: "power of the microwave", Default: "1250 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "oven_factor", Label: "its power factor", Default: "95 %", Unit: "%", Low: "10 %", High: "100 %"},
		{Name: "small", Label: "power of the electronics", Default: "160 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "small_factor", Label: "their power factor", Default: "60 %", Unit: "%", Low: "10 %", High: "100 %"},
	},
	Solve: solveLoads,
}

func solveLoads(in *weave.Inputs) (weave.Answer, error) {
	rated := weave.In[units.ApparentPower](in, "rated")
	watts := weave.In[units.Ratio](in, "watts")
	k1 := weave.In[units.Ratio](in, "oven_factor")
	k2 := weave.In[units.Ratio](in, "small_factor")
	oven := inverter.Demand{
		Name:        "microwave",
		Power:       weave.In[units.Power](in, "oven"),
		PowerFactor: units.Some(k1), Kind: inverter.SteadyLoad,
	}
	small := inverter.Demand{
		Name:        "electronics",
		Power:       weave.In[units.Power](in, "small"),
		PowerFactor: units.Some(k2), Kind: inverter.SteadyLoad,
	}
	h, err := inverter.Check(inverter.Machine{
		Continuous:   rated.Real(watts),
		ContinuousVA: units.Some(rated),
		Efficiency:   90 * units.Percent, // for the battery side
	}, []inverter.Demand{oven, small})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "Together they take {{power}} and {{apparent}}. An " +
			"inverter must give both for hours; this one has " +
			"{{power_left}} and {{apparent_left}} left, where " +
			"less than nothing is too much.",
		Values: []weave.Value{
			weave.Show("power", h.Power, "W", 4),
			weave.Show("apparent", h.Apparent, "VA", 4),
			weave.Show("power_left", h.PowerLeft, "W", 3),
			weave.Show("apparent_left", h.ApparentLeft, "VA", 3),
		},
		Working:  h.Working(),
		Findings: h.Findings(),
	}, nil
}

var theBatterySide = weave.Worked{
	Name:  "battery_side",
	Title: "What the battery side must carry",
	Question: "An inverter of {{power}} with an efficiency of {{efficiency}} cuts off at {{lowest}}. What does it draw at full output, " +
		"what must cable and fuse be rated for with a margin of {{margin}}, and can one battery that lets through {{limit}} feed it?",
	Inputs: []weave.Input{
		{Name: "power", Label: "inverter, for hours", Default: "2000 W", Unit: "W", Low: "10 W", High: "100000 W"},
		{Name: "efficiency", Label: "efficiency at full output", Default: "88 %", Unit: "%", Low: "5 %", High: "100 %"},
		{Name: "lowest", Label: "voltage at which it cuts off", Default: "10.5 V", Unit: "V", Low: "5 V", High: "120 V"},
		{Name: "margin", Label: "part of the current to be rated for", Default: "125 %", Unit: "%", Low: "100 %", High: "300 %"},
		{Name: "nominal", Label: "nominal voltage of the bank", Default: "12 V", Unit: "V", Low: "5 V", High: "120 V"},
		{Name: "limit", Label: "limit of one battery", Default: "100 A", Unit: "A", Low: "0.1 A", High: "1000 A"},
	},
	Solve: solveBatterySide,
}

func solveBatterySide(in *weave.Inputs) (weave.Answer, error) {
	power := weave.In[units.Power](in, "power")
	efficiency := weave.In[units.Ratio](in, "efficiency")
	lowest := weave.In[units.Voltage](in, "lowest")
	margin := weave.In[units.Ratio](in, "margin")
	nominal := weave.In[units.Voltage](in, "nominal")
	limit := weave.In[units.Current](in, "limit")
	side, err := inverter.BatterySide(inverter.DCSide{
		Machine: inverter.Machine{
			Continuous:    power,
			Efficiency:    efficiency,
			LowestVoltage: units.Some(lowest),
		},
		Margin: margin,
	})
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "{{drawn}} leave the battery as {{current}} just " +
			"before the inverter cuts off. Cable and fuse must " +
			"be rated for {{required}}, more where it is hot. " +
			"Watts over the nominal {{nominal}} would have said " +
			"{{believed}}. One battery of {{limit}} gives what " +
			"it can; the inverter wants {{batteries}} times " +
			"that.",
		Values: []weave.Value{
			weave.Show("drawn", side.Power, "W", 4),
			weave.Show("current", side.Current, "A", 3),
			weave.Show("required", side.Required, "A", 3),
			weave.Show("believed", power.At(nominal), "A", 3),
			weave.Show("batteries",
				units.RatioOf(side.Current, limit), "1", 3),
		},
		Working:  side.Working(),
		Findings: side.Findings(),
	}, nil
}

var theDay = weave.Worked{
	Name:  "day",
	Title: "A day, with what the inverter takes itself",
	Question: "Loads on the inverter use {{energy}} a day. Its efficiency is {{efficiency}}, its own use {{idle}}, and it is on for {{on}}. " +
		"What does that take from a bank of {{voltage}}?",
	Inputs: []weave.Input{
		{Name: "energy", Label: "energy of the loads in a day", Default: "600 Wh", Unit: "Wh", Low: "1 Wh", High: "100000 Wh"},
		efficiencyInput, idleInput,
		{Name: "on", Label: "hours that it is on", Default: "24 h", Unit: "h", Low: "0.01 h", High: "24 h"},
		{Name: "voltage", Label: "voltage of the bank", Default: "12.8 V", Unit: "V", Low: "5 V", High: "120 V"},
	},
	Solve: solveDay,
}

func solveDay(in *weave.Inputs) (weave.Answer, error) {
	on := weave.In[units.Elapsed](in, "on")
	idle := weave.In[units.Power](in, "idle")
	voltage := weave.In[units.Voltage](in, "voltage")
	use, err := inverter.EnergyADay(inverter.Day{
		Energy:     weave.In[units.Energy](in, "energy"),
		Efficiency: weave.In[units.Ratio](in, "efficiency"),
		Idle:       units.Some(idle),
		On:         units.Some(on),
		Voltage:    units.Some(voltage),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	arrives := units.RatioOf(use.Day.Energy, use.Energy)
	return weave.Answer{
		Text: "The loads take {{loads}} from the bank and the " +
			"inverter itself {{own}}: {{all}} or {{charge}}. " +
			"Over the day {{arrives}} of it arrives at the " +
			"loads.",
		Values: []weave.Value{
			weave.Show("loads", use.Loads, "Wh", 4),
			weave.Show("own", use.Idle, "Wh", 4),
			weave.Show("all", use.Energy, "Wh", 4),
			weave.Show("charge", use.Charge.Or(0), "Ah", 3),
			weave.Show("arrives", arrives, "%", 2),
		},
		Working:  use.Working(),
		Findings: use.Findings(),
	}, nil
}

var theSets = weave.Worked{
	Name:  "sets",
	Title: "Which sets are too much, and which can run",
	Question: "On an inverter of {{rated}} hang a microwave that takes {{oven}}, a kettle of {{kettle}}, a toaster of {{toaster}}, a coffee " +
		"maker of {{coffee}} and a television of {{television}}. By their watts, which of them must not run together, and which can?",
	Inputs: []weave.Input{
		{Name: "rated", Label: "inverter, for hours", Default: "2000 W", Unit: "W", Low: "10 W", High: "100000 W"},
		{Name: "oven", Label: "power of the microwave", Default: "1250 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "kettle", Label: "power of the kettle", Default: "1000 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "toaster", Label: "power of the toaster", Default: "700 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "coffee", Label: "power of the coffee maker", Default: "450 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "television", Label: "power of the television", Default: "100 W", Unit: "W", Low: "0 W", High: "3000 W"},
	},
	Solve:   solveSets,
	Helpers: []string{"tooMuch", "listed"},
}

func solveSets(in *weave.Inputs) (weave.Answer, error) {
	rated := weave.In[units.Power](in, "rated")
	watts := inverter.Limit{
		Name: "the inverter", Power: units.Some(rated),
	}
	oven := weave.In[units.Power](in, "oven")
	kettle := weave.In[units.Power](in, "kettle")
	toaster := weave.In[units.Power](in, "toaster")
	coffee := weave.In[units.Power](in, "coffee")
	television := weave.In[units.Power](in, "television")
	demands := []inverter.Demand{
		{Name: "microwave", Power: oven},
		{Name: "kettle", Power: kettle},
		{Name: "toaster", Power: toaster},
		{Name: "coffee maker", Power: coffee},
		{Name: "television", Power: television},
	}
	over, err := inverter.Sets(watts, demands)
	if err != nil {
		return weave.Answer{}, err
	}
	can, err := inverter.CanRun(watts, demands)
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "Too much: {{sets}}. A set with one of these in it " +
			"is too much as well, and every other set is not. " +
			"The most that can run together, to which nothing " +
			"can be added: {{can}}. " +
			"All at once would be {{together}}.",
		Values: []weave.Value{
			weave.Say("sets", tooMuch(over)),
			weave.Say("can", listed(can.Sets, can.Names)),
			weave.Show("together", over.Together.Power, "W", 4),
		},
		Working:  over.Working(),
		Findings: over.Findings(),
	}, nil
}

// tooMuch names the sets, "kettle + toaster; microwave + kettle".
func tooMuch(over inverter.Overload) string {
	return listed(over.Sets, over.Names)
}

// listed names sets, or says that there are none.
func listed(sets []inverter.Set,
	names func(inverter.Members) []string) string {
	if len(sets) == 0 {
		return "none of them"
	}
	var list []string
	for _, set := range sets {
		list = append(list, strings.Join(names(set.Members), " + "))
	}
	return strings.Join(list, "; ")
}
