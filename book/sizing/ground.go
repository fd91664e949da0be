package sizing

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

var theLoop = weave.Worked{
	Name:  "loop",
	Title: "The bank that feeds its own charger",
	Question: "Shore power drops, an inverter large enough takes over the panel, and the converter of {{charge}} at {{voltage}} hangs on that panel. " +
		"Efficiencies are {{efficiency}} and {{charger_efficiency}}. The bank has {{usable}} and carries {{ac}} through the inverter, which takes " +
		"{{idle}} itself, and {{dc}} directly. How long does it last, with and without the converter?",
	Inputs: []weave.Input{
		{Name: "charge", Label: "most that the converter gives", Default: "45 A", Unit: "A", Low: "0.1 A", High: "1000 A"},
		{Name: "voltage", Label: "at a voltage of", Default: "13.6 V", Unit: "V", Low: "5 V", High: "120 V"},
		efficiencyInput,
		{Name: "charger_efficiency", Label: "efficiency of the converter", Default: "85 %", Unit: "%", Low: "5 %", High: "100 %"},
		{Name: "usable", Label: "usable energy of the bank", Default: "2400 Wh", Unit: "Wh", Low: "1 Wh", High: "100000 Wh"},
		{Name: "ac", Label: "average of the loads on the inverter", Default: "40 W", Unit: "W", Low: "0 W", High: "10000 W"},
		idleInput,
		{Name: "dc", Label: "average of the loads on the bank", Default: "35 W", Unit: "W", Low: "1 W", High: "10000 W"},
	},
	Solve: solveLoop,
}

func solveLoop(in *weave.Inputs) (weave.Answer, error) {
	charge := weave.In[units.Current](in, "charge")
	full := charge.At(weave.In[units.Voltage](in, "voltage"))
	made := weave.In[units.Ratio](in, "efficiency")
	charged := weave.In[units.Ratio](in, "charger_efficiency")
	idle := weave.In[units.Power](in, "idle")
	usable := weave.In[units.Energy](in, "usable")
	carry := inverter.Carry{
		AC:         weave.In[units.Power](in, "ac"),
		Efficiency: made,
		Idle:       units.Some(idle),
		DC:         weave.In[units.Power](in, "dc"),
		Usable:     units.Some(usable),
	}
	loops, err := inverter.FeedLoops([]string{"shore", "bank"},
		[]inverter.Feed{
			{Name: "pass-through", From: "shore", To: "panel",
				With:       []string{"shore"},
				Efficiency: 100 * units.Percent},
			{Name: "inverter", From: "bank", To: "panel",
				With: []string{"bank"}, Efficiency: made},
			{Name: "converter", From: "panel", To: "bank",
				Efficiency: charged, Most: units.Some(full)},
		}, "bank")
	if err != nil {
		return weave.Answer{}, err
	}
	without, err := inverter.CarryTime(carry)
	if err != nil {
		return weave.Answer{}, err
	}
	loop := loops[0] // the only way round: bank, panel, bank
	carry.Loop = loop.Lost
	with, err := inverter.CarryTime(carry)
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "At full output the converter puts {{back}} back " +
			"into the bank, and the inverter takes {{drawn}} " +
			"out for it: {{lost}} are lost for nothing. The " +
			"bank lasts {{with}} instead of {{without}}.",
		Values: []weave.Value{
			weave.Show("back", loop.Back, "W", 3),
			weave.Show("drawn", loop.Drawn, "W", 3),
			weave.Show("lost", loop.Lost, "W", 3),
			weave.Show("with", with.Time.Or(0), "h", 3),
			weave.Show("without", without.Time.Or(0), "h", 3),
		},
		Working:  loop.Working(),
		Findings: append(loop.Findings(), with.Findings()...),
	}, nil
}

var theBonds = weave.Worked{
	Name:  "bonds",
	Title: "Neutral and ground, counted for each source",
	Question: "A rig has shore power, an inverter and a generator whose frame is {{generator}}; the cord stays plugged in. The inverter opens hot and neutral of the shore side when it runs; the transfer switch of the generator {{transfer}}; " +
		"the inverter's bonding relay {{relay}}; the bonding screw of the panel inside is {{screw}}. How often are neutral and ground joined, " +
		"above all with {{active}} active?",
	Inputs: []weave.Input{
		{Name: "generator", Label: "neutral and frame of the generator", Default: "bonded to its neutral",
			Choices: []string{"bonded to its neutral", "not bonded to its neutral"}},
		{Name: "transfer", Label: "transfer switch of the generator", Default: "leaves the neutral connected",
			Choices: []string{"leaves the neutral connected", "switches the neutral"}},
		{Name: "relay", Label: "relay of the inverter", Default: "opens and closes as it should",
			Choices: []string{"opens and closes as it should", "is stuck closed", "is not there"}},
		{Name: "screw", Label: "screw of the panel", Default: "out", Choices: []string{"out", "still in"}},
		{Name: "active", Label: "source that is shown", Default: "generator", Choices: []string{"shore", "inverter", "generator"}},
	},
	Solve:   solveBonds,
	Helpers: []string{"bondsOf"},
}

func solveBonds(in *weave.Inputs) (weave.Answer, error) {
	bonds := bondsOf(weave.Text(in, "generator"),
		weave.Text(in, "transfer"), weave.Text(in, "relay"),
		weave.Text(in, "screw"))
	active := weave.Text(in, "active")
	sources := []inverter.Source{
		{Name: "shore", Earthed: true},
		{Name: "inverter"}, {Name: "generator"},
	}
	counts, err := inverter.Bonding(sources, bonds)
	if err != nil {
		return weave.Answer{}, err
	}
	answer := weave.Answer{
		Text: "On shore power {{shore}}, on the inverter " +
			"{{inverter}}, on the generator {{generator_count}}. " +
			"There must be one, each time.",
		Values: []weave.Value{
			weave.Say("shore", counts[0].Bonds),
			weave.Say("inverter", counts[1].Bonds),
			weave.Say("generator_count", counts[2].Bonds),
		},
	}
	for _, c := range counts {
		if c.Source.Name == active {
			answer.Working = c.Working()
			answer.Findings = c.Findings()
		}
	}
	return answer, nil
}

// bondsOf describes the places where neutral and ground are joined.
// Without sources behind it, a bond is there with all of them.
func bondsOf(
	generator, transfer, relay, screw string) []inverter.Bond {
	var bonds []inverter.Bond
	add := func(name string, with ...string) {
		bond := inverter.Bond{Name: name, With: with}
		bonds = append(bonds, bond)
	}
	if transfer == "leaves the neutral connected" {
		add("campground service", "shore", "generator")
	} else {
		add("campground service", "shore")
	}
	if generator == "bonded to its neutral" {
		add("generator frame", "generator")
	}
	switch relay {
	case "opens and closes as it should":
		add("inverter relay", "inverter")
	case "is stuck closed":
		add("inverter relay")
	}
	if screw == "still in" {
		add("panel screw")
	}
	return bonds
}
