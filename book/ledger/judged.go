package ledger

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

var thePedestal = weave.Worked{
	Name:  "pedestal",
	Title: "A weak supply: who takes less and who takes more",
	Question: "A heater of {{heater}}, an air conditioner of {{cooler}} with a power factor of {{factor}} and a converter of {{converter}} " +
		"with the same, all marked for 120 V, run on a pedestal that gives {{volts}} under load. What current flows?",
	Inputs: []weave.Input{
		{Name: "heater", Label: "power of the heater", Default: "1500 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "cooler", Label: "power of the air conditioner", Default: "1400 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "converter", Label: "power of the converter", Default: "500 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "factor", Label: "power factor of those two", Default: "95 %", Unit: "%", Low: "10 %", High: "100 %"},
		{Name: "volts", Label: "voltage under load", Default: "104 V", Unit: "V", Low: "10 V", High: "300 V"},
	},
	Solve: solvePedestal,
}

func solvePedestal(in *weave.Inputs) (weave.Answer, error) {
	list := []loads.Load{
		load("heater", "ac", loads.Resistive,
			weave.In[units.Power](in, "heater")),
		load("air conditioner", "ac", loads.Motor,
			weave.In[units.Power](in, "cooler")),
		load("converter", "ac", loads.ConstantPower,
			weave.In[units.Power](in, "converter")),
	}
	factor := units.Some(weave.In[units.Ratio](in, "factor"))
	list[1].Rating.PowerFactor = factor
	list[2].Rating.PowerFactor = factor
	volts := weave.In[units.Voltage](in, "volts")
	bus := rigBuses()[1]
	var draws [3]loads.Draw
	var marked, now units.Current
	var found []working.Finding
	for i, l := range list {
		l.Hours = units.Some(1 * units.Hour)
		line, err := loads.Take(bus, l)
		if err != nil {
			return weave.Answer{}, err
		}
		if draws[i], err = line.At(volts); err != nil {
			return weave.Answer{}, err
		}
		marked += line.Current
		now += draws[i].Current
		found = append(found, draws[i].Findings()...)
	}
	fewer := units.Scale(marked, units.RatioOf(volts, bus.Voltage))
	return weave.Answer{
		Text: "{{now}}. At 120 V it would be {{marked}}, and " +
			"if all three were resistances {{fewer}}. The heater " +
			"takes {{amperes}}, which is {{heat}}; the air " +
			"conditioner {{motor}} and the converter {{supply}}.",
		Values: []weave.Value{
			weave.Show("now", now, "A", 3),
			weave.Show("marked", marked, "A", 3),
			weave.Show("fewer", fewer, "A", 3),
			weave.Show("amperes", draws[0].Current, "A", 3),
			weave.Show("heat", draws[0].Power, "W", 4),
			weave.Show("motor", draws[1].Current, "A", 3),
			weave.Show("supply", draws[2].Current, "A", 3),
		},
		Working:  draws[1].Working(),
		Findings: found,
	}, nil
}

var theQuote = weave.Worked{
	Name:  "quote",
	Title: "A seller's number, checked",
	Question: "For the same trailer a quote says: {{stated}} a day from a bank at {{bank}}. Its loads are those of the ledger above, the " +
		"furnace at {{furnace}} of the night and the cooling at {{cold}}; the inverter has an efficiency of {{efficiency}} and idles at {{idle}}. " +
		"Does the number hold?",
	Inputs: []weave.Input{
		{Name: "stated", Label: "charge a day as quoted", Default: "208 Ah"},
		{Name: "furnace", Label: "duty of the furnace in the night", Default: "35 %", Unit: "%", Low: "0 %", High: "100 %"},
		{Name: "cold", Label: "duty of refrigerator and freezer", Default: "32 %", Unit: "%", Low: "0 %", High: "100 %"},
		efficiencyInput, idleInput, bankInput,
	},
	Solve: solveQuote,
}

func solveQuote(in *weave.Inputs) (weave.Answer, error) {
	stated := weave.Parsed(in, "stated", units.ParsePrinted)
	ledger, err := loads.Audit(rigBuses(), rigLoads(
		weave.In[units.Ratio](in, "furnace"),
		weave.In[units.Ratio](in, "cold"),
	))
	if err != nil {
		return weave.Answer{}, err
	}
	idle := weave.In[units.Power](in, "idle")
	voltage := weave.In[units.Voltage](in, "bank")
	bank, err := inverter.EnergyADay(inverter.Day{
		Energy:     ledger.Buses[1].Energy,
		Longest:    units.Some(ledger.Buses[1].Longest),
		Efficiency: weave.In[units.Ratio](in, "efficiency"),
		Idle:       units.Some(idle),
		Voltage:    units.Some(voltage),
	})
	if err != nil {
		return weave.Answer{}, err
	}
	found := append(ledger.Findings(), bank.Findings()...)
	working.Sort(found)
	dc := ledger.Buses[0].Energy.At(voltage)
	ac := bank.Charge.Or(0)
	loadsOnly := dc + bank.Loads.At(voltage)
	verdict, err := working.Claim{
		What:     "charge a day from the bank",
		Stated:   stated,
		Computed: dc + ac,
		Unit:     "Ah",
		SafeSide: working.Higher,
		Findings: found,
	}.Judge()
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "The verdict is: {{verdict}}. Of the {{charge}} " +
			"{{dc}} are for the 12 V loads and {{ac}} go through " +
			"the inverter. Without what the inverter takes for " +
			"being on it would be {{without}}.",
		Values: []weave.Value{
			weave.Say("verdict", verdict),
			weave.Show("charge", dc+ac, "Ah", 3),
			weave.Show("dc", dc, "Ah", 3),
			weave.Show("ac", ac, "Ah", 3),
			weave.Show("without", loadsOnly, "Ah", 3),
		},
		Working:  bank.Working(),
		Findings: found,
	}, nil
}
