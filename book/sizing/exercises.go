package sizing

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

var dryerExercise = weave.Exercise{
	Name: "dryer",
	Question: "A hair dryer takes {{dryer}}, and laptop chargers {{laptops}} with a power factor of 60 %. What is left of an inverter of 1500 W " +
		"and 1500 VA?",
	Inputs: []weave.Input{
		{Name: "dryer", Label: "power of the hair dryer", Default: "1200 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "laptops", Label: "power of the chargers", Default: "150 W", Unit: "W", Low: "0 W", High: "10000 W"},
	},
	Solve: solveDryer,
}

func solveDryer(in *weave.Inputs) (weave.Answer, error) {
	h, err := inverter.Check(inverter.Machine{
		Continuous:   1500 * units.Watt,
		ContinuousVA: units.Some(1500 * units.VoltAmpere),
		Efficiency:   90 * units.Percent,
	}, []inverter.Demand{
		{Name: "hair dryer", Power: weave.In[units.Power](in, "dryer"), PowerFactor: units.Some(100 * units.Percent), Kind: inverter.SteadyLoad},
		{Name: "laptop chargers", Power: weave.In[units.Power](in, "laptops"), PowerFactor: units.Some(60 * units.Percent), Kind: inverter.SteadyLoad},
	})
	return weave.Answer{
		Text: "{{power_left}} and {{apparent_left}}. The volt-amperes decide.",
		Values: []weave.Value{
			weave.Show("power_left", h.PowerLeft, "W", 3),
			weave.Show("apparent_left", h.ApparentLeft, "VA", 3),
		},
		Working: h.Working(),
	}, err
}

var doubledExercise = weave.Exercise{
	Name: "doubled",
	Question: "The same inverter of {{power}}, efficiency 92 %, for a 12 V bank with a cut-off at 10.5 V and for a 24 V bank with a cut-off " +
		"at 21 V. What must cable and fuse be rated for, with 125 %?",
	Inputs: []weave.Input{
		{Name: "power", Label: "inverter, for hours", Default: "3000 W", Unit: "W", Low: "10 W", High: "100000 W"},
	},
	Solve: solveDoubled,
}

func solveDoubled(in *weave.Inputs) (weave.Answer, error) {
	side := inverter.DCSide{
		Machine: inverter.Machine{
			Continuous:    weave.In[units.Power](in, "power"),
			Efficiency:    92 * units.Percent,
			LowestVoltage: units.Some(10.5 * units.Volt),
		},
		Margin: inverter.NECMargin,
	}
	twelve, err := inverter.BatterySide(side)
	if err != nil {
		return weave.Answer{}, err
	}
	side.Machine.LowestVoltage = units.Some(21 * units.Volt)
	double, err := inverter.BatterySide(side)
	return weave.Answer{
		Text: "{{twelve}} at 12 V, {{double}} at 24 V, where {{current}} flow.",
		Values: []weave.Value{
			weave.Show("twelve", twelve.Required, "A", 3),
			weave.Show("double", double.Required, "A", 3),
			weave.Show("current", double.Current, "A", 3),
		},
		Working: double.Working(),
	}, err
}

var storageExercise = weave.Exercise{
	Name: "storage",
	Question: "A rig is put away with the inverter left on. It takes {{idle}} itself, nothing runs, and the bank has {{usable}}. After how many " +
		"hours is it empty?",
	Inputs: []weave.Input{
		{Name: "idle", Label: "own use of the inverter", Default: "20 W", Unit: "W", Low: "1 W", High: "1000 W"},
		{Name: "usable", Label: "usable energy of the bank", Default: "2400 Wh", Unit: "Wh", Low: "1 Wh", High: "100000 Wh"},
	},
	Solve: solveStorage,
}

func solveStorage(in *weave.Inputs) (weave.Answer, error) {
	hold, err := inverter.CarryTime(inverter.Carry{
		Efficiency: 90 * units.Percent,
		Idle:       units.Some(weave.In[units.Power](in, "idle")),
		Usable:     units.Some(weave.In[units.Energy](in, "usable")),
	})
	return weave.Answer{
		Text: "{{hours}}, which is {{days}}. A battery that then stands empty for the winter is the dear part.",
		Values: []weave.Value{
			weave.Show("hours", hold.Time.Or(0), "h", 3),
			weave.Show("days", hold.Time.Or(0), "d", 2),
		},
		Working: hold.Working(),
	}, err
}

var nightExercise = weave.Exercise{
	Name: "night",
	Question: "An air conditioner runs on {{running}} through an inverter with an efficiency of 90 % and an own use of 25 W. How long does a bank " +
		"of {{usable}} carry it? Does a soft starter make that longer?",
	Inputs: []weave.Input{
		{Name: "running", Label: "power of the air conditioner", Default: "1400 W", Unit: "W", Low: "1 W", High: "10000 W"},
		{Name: "usable", Label: "usable energy of the bank", Default: "4800 Wh", Unit: "Wh", Low: "1 Wh", High: "100000 Wh"},
	},
	Solve: solveNight,
}

func solveNight(in *weave.Inputs) (weave.Answer, error) {
	hold, err := inverter.CarryTime(inverter.Carry{
		AC:         weave.In[units.Power](in, "running"),
		Efficiency: 90 * units.Percent,
		Idle:       units.Some(25 * units.Watt),
		Usable:     units.Some(weave.In[units.Energy](in, "usable")),
	})
	return weave.Answer{
		Text: "{{hours}}, while the compressor runs without a break. A soft starter changes the first moment and nothing of this.",
		Values: []weave.Value{
			weave.Show("hours", hold.Time.Or(0), "h", 3),
		},
		Working: hold.Working(),
	}, err
}

var serviceExercise = weave.Exercise{
	Name: "service",
	Question: "On a service of {{service}} at 120 V hang an air conditioner of 1390 W with a power factor of 95 %, a water heater of 1440 W and a " +
		"converter of {{converter}} with 70 %. Which of them are too much together for hours, that is above 80 % of the rating?",
	Inputs: []weave.Input{
		{Name: "service", Label: "rating of the service", Default: "30 A", Unit: "A", Low: "1 A", High: "400 A"},
		{Name: "converter", Label: "power of the converter", Default: "800 W", Unit: "W", Low: "0 W", High: "10000 W"},
	},
	Solve: solveService,
}

func solveService(in *weave.Inputs) (weave.Answer, error) {
	over, err := inverter.Sets(inverter.Limit{
		Name:    "the service",
		Current: units.Some(weave.In[units.Current](in, "service")),
		Voltage: 120 * units.Volt,
		Share:   units.Some(inverter.ContinuousShare),
	}, []inverter.Demand{
		{Name: "air conditioner", Power: 1390 * units.Watt, PowerFactor: units.Some(95 * units.Percent)},
		{Name: "water heater", Power: 1440 * units.Watt, PowerFactor: units.Some(100 * units.Percent)},
		{Name: "converter", Power: weave.In[units.Power](in, "converter"), PowerFactor: units.Some(70 * units.Percent)},
	})
	return weave.Answer{
		Text: "Too much for hours: {{sets}}. All of them together are {{together}}.",
		Values: []weave.Value{
			weave.Say("sets", tooMuch(over)),
			weave.Show("together", over.Together.Current, "A", 3),
		},
		Working: over.Working(),
	}, err
}

var refillExercise = weave.Exercise{
	Name: "refill",
	Question: "A charger of {{charge}} at 14.4 V, efficiency 88 % and power factor 98 %, is to put {{energy}} back. What does it take from the " +
		"generator, and for how long at the least? Would a larger generator be faster?",
	Inputs: []weave.Input{
		{Name: "charge", Label: "current into the bank", Default: "60 A", Unit: "A", Low: "0.1 A", High: "1000 A"},
		{Name: "energy", Label: "energy to put back", Default: "3000 Wh", Unit: "Wh", Low: "1 Wh", High: "100000 Wh"},
	},
	Solve: solveRefill,
}

func solveRefill(in *weave.Inputs) (weave.Answer, error) {
	use, err := inverter.ChargerDraw(inverter.Charger{
		Current:     weave.In[units.Current](in, "charge"),
		Voltage:     14.4 * units.Volt,
		Efficiency:  88 * units.Percent,
		PowerFactor: 98 * units.Percent,
		Supply:      120 * units.Volt,
		Energy:      units.Some(weave.In[units.Energy](in, "energy")),
	})
	return weave.Answer{
		Text: "{{apparent}}, for {{hours}} and in practice longer, since a bank takes less as it fills. A larger generator changes nothing; the " +
			"charger sets the pace.",
		Values: []weave.Value{
			weave.Show("apparent", use.Apparent, "VA", 3),
			weave.Show("hours", use.Time.Or(0), "h", 3),
		},
		Working: use.Working(),
	}, err
}

var secondBondExercise = weave.Exercise{
	Name: "second_bond",
	Question: "A screw left in a panel joins neutral and ground a second time. {{current}} come back from the loads; the neutral between the two " +
		"joints has {{neutral}}, ground wire and frame {{ground}}. How much flows in ground wire and frame?",
	Inputs: []weave.Input{
		{Name: "current", Label: "current that comes back", Default: "20 A", Unit: "A", Low: "0.1 A", High: "400 A"},
		{Name: "neutral", Label: "resistance of the neutral", Default: "40 mΩ", Unit: "mΩ", Low: "0.1 mΩ", High: "10000 mΩ"},
		{Name: "ground", Label: "resistance of ground wire and frame", Default: "60 mΩ", Unit: "mΩ", Low: "0.1 mΩ", High: "10000 mΩ"},
	},
	Solve: solveSecondBond,
}

func solveSecondBond(in *weave.Inputs) (weave.Answer, error) {
	share, err := inverter.ParallelNeutral(inverter.NeutralReturn{
		Current: weave.In[units.Current](in, "current"),
		Neutral: weave.In[units.Resistance](in, "neutral"),
		Ground:  weave.In[units.Resistance](in, "ground"),
	})
	return weave.Answer{
		Text: "{{ground_current}}, on bare metal. Protection against ground faults opens at 4 mA to 6 mA (from memory); a breaker sees nothing wrong.",
		Values: []weave.Value{
			weave.Show("ground_current", share.Ground, "A", 3),
		},
		Working: share.Working(),
	}, err
}
