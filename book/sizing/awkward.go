package sizing

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

var theAirConditioner = weave.Worked{
	Name:  "aircon",
	Title: "Starting an air conditioner",
	Question: "A roof air conditioner on 120 V runs on {{running}}; its plate says {{locked_rotor}} with a locked rotor, and it is up to speed " +
		"after {{start_for}}. {{others}} of other loads run already. The inverter gives {{rated}} for hours and {{surge}} for " +
		"{{surge_for}}. Does it start, without and with a soft starter that leaves {{share}}? (The one fitted now: {{starter}}.)",
	Inputs: []weave.Input{
		{Name: "running", Label: "power of the air conditioner", Default: "1400 W", Unit: "W", Low: "1 W", High: "10000 W"},
		{Name: "locked_rotor", Label: "locked-rotor current", Default: "65 A", Unit: "A", Low: "1 A", High: "500 A"},
		{Name: "start_for", Label: "length of a start", Default: "0.5 s", Unit: "s", Low: "0.001 s", High: "60 s"},
		{Name: "others", Label: "power of other loads", Default: "300 W", Unit: "W", Low: "0 W", High: "10000 W"},
		{Name: "rated", Label: "inverter, for hours", Default: "3000 VA", Unit: "VA", Low: "10 VA", High: "100000 VA"},
		{Name: "surge", Label: "inverter, for a moment", Default: "6000 VA", Unit: "VA", Low: "10 VA", High: "200000 VA"},
		{Name: "surge_for", Label: "length of that moment", Default: "3 s", Unit: "s", Low: "0.001 s", High: "60 s"},
		{Name: "share", Label: "part that the soft starter leaves", Default: "40 %", Unit: "%", Low: "5 %", High: "100 %"},
		{Name: "starter", Label: "soft starter fitted", Default: "none", Choices: []string{"none", "soft starter"}},
	},
	Solve:   solveAirConditioner,
	Helpers: []string{"startOn"},
}

func solveAirConditioner(in *weave.Inputs) (weave.Answer, error) {
	start := inverter.Motor{
		LockedRotor: weave.In[units.Current](in, "locked_rotor"),
		Voltage:     120 * units.Volt,
	}
	share := weave.In[units.Ratio](in, "share")
	fitted := weave.Text(in, "starter")
	hard, err := startOn(in, start)
	if err != nil {
		return weave.Answer{}, err
	}
	start.SoftStart = units.Some(share)
	soft, err := startOn(in, start)
	if err != nil {
		return weave.Answer{}, err
	}
	now := hard
	if fitted == "soft starter" {
		now = soft
	}
	return weave.Answer{
		Text: "Straight on the line the compressor takes " +
			"{{hard}}, {{hard_peak}} with the others; of " +
			"the surge that leaves {{hard_left}}. With the soft " +
			"starter it is {{soft}}, {{soft_peak}} with the " +
			"others, and leaves {{soft_left}}. Once it runs, " +
			"nothing of the difference remains: {{together}} " +
			"together, {{run_left}} left for hours.",
		Values: []weave.Value{
			weave.Show("hard", hard.Start-hard.Others, "VA", 4),
			weave.Show("hard_peak", hard.Start, "VA", 4),
			weave.Show("hard_left", hard.SurgeLeft.Or(0), "VA", 3),
			weave.Show("soft", soft.Start-soft.Others, "VA", 4),
			weave.Show("soft_peak", soft.Start, "VA", 4),
			weave.Show("soft_left", soft.SurgeLeft.Or(0), "VA", 3),
			weave.Show("together", now.Apparent, "VA", 4),
			weave.Show("run_left", now.ApparentLeft, "VA", 3),
		},
		Working:  now.Working(),
		Findings: now.Findings(),
	}, nil
}

// startOn starts a motor on the inverter while the others run.
func startOn(in *weave.Inputs, motor inverter.Motor) (
	inverter.Headroom, error) {
	rated := weave.In[units.ApparentPower](in, "rated")
	surge := weave.In[units.ApparentPower](in, "surge")
	holds := weave.In[units.Elapsed](in, "surge_for")
	lasts := weave.In[units.Elapsed](in, "start_for")
	running := weave.In[units.Power](in, "running")
	others := weave.In[units.Power](in, "others")
	start, err := inverter.Starting(motor)
	if err != nil {
		return inverter.Headroom{}, err
	}
	// It ends up running, whatever the starter leaves of the start.
	runs := running.Apparent(95 * units.Percent)
	return inverter.Check(inverter.Machine{
		Continuous:   rated.Real(100 * units.Percent),
		ContinuousVA: units.Some(rated),
		Surge:        units.Some(surge),
		SurgeFor:     units.Some(holds),
		Efficiency:   90 * units.Percent, // for the battery side
	}, []inverter.Demand{{
		Name:        "air conditioner",
		Power:       running,
		PowerFactor: units.Some(95 * units.Percent),
		Kind:        inverter.MotorLoad,
		Start:       units.Some(max(start.Apparent, runs)),
		StartFor:    units.Some(lasts),
	}, {
		Name:        "other loads",
		Power:       others,
		PowerFactor: units.Some(90 * units.Percent),
		Kind:        inverter.SteadyLoad,
	}})
}

var thePedestal = weave.Worked{
	Name:  "pedestal",
	Title: "A charger's amperes at the pedestal",
	Question: "A converter charges with {{charge}} at {{voltage}}. Its efficiency is {{efficiency}} and its power factor {{factor}}. What does it " +
		"take from an outlet of {{outlet}} at {{supply}}, and what is left there for hours?",
	Inputs: []weave.Input{
		{Name: "charge", Label: "current into the bank", Default: "55 A", Unit: "A", Low: "0.1 A", High: "1000 A"},
		{Name: "voltage", Label: "voltage of the bank while it charges", Default: "13.6 V", Unit: "V", Low: "5 V", High: "120 V"},
		{Name: "efficiency", Label: "efficiency of the charger", Default: "85 %", Unit: "%", Low: "5 %", High: "100 %"},
		{Name: "factor", Label: "its power factor", Default: "70 %", Unit: "%", Low: "10 %", High: "100 %"},
		{Name: "supply", Label: "voltage of the supply", Default: "120 V", Unit: "V", Low: "10 V", High: "480 V"},
		{Name: "outlet", Label: "rating of the outlet", Default: "15 A", Unit: "A", Low: "1 A", High: "400 A"},
	},
	Solve: solvePedestal,
}

func solvePedestal(in *weave.Inputs) (weave.Answer, error) {
	outlet := weave.In[units.Current](in, "outlet")
	charger := inverter.Charger{
		Current:     weave.In[units.Current](in, "charge"),
		Voltage:     weave.In[units.Voltage](in, "voltage"),
		Efficiency:  weave.In[units.Ratio](in, "efficiency"),
		PowerFactor: weave.In[units.Ratio](in, "factor"),
		Supply:      weave.In[units.Voltage](in, "supply"),
	}
	use, err := inverter.ChargerDraw(charger)
	if err != nil {
		return weave.Answer{}, err
	}
	over, err := inverter.Sets(inverter.Limit{
		Name:    "the outlet",
		Current: units.Some(outlet),
		Voltage: charger.Supply,
		Share:   units.Some(inverter.ContinuousShare),
	}, []inverter.Demand{use.Demand("converter")})
	if err != nil {
		return weave.Answer{}, err
	}
	may := units.Scale(outlet, inverter.ContinuousShare)
	left := units.Minus(may, use.Current)
	better := use.Power.At(charger.Supply)
	return weave.Answer{
		Text: "{{current}}, of the {{may}} that may be taken for " +
			"hours: {{left}} left. With a power factor of 1 it " +
			"would take {{corrected}}.",
		Values: []weave.Value{
			weave.Show("current", use.Current, "A", 3),
			weave.Show("may", may, "A", 3),
			weave.Show("left", left, "A", 2),
			weave.Show("corrected", better, "A", 3),
		},
		Working:  use.Working(),
		Findings: over.Findings(),
	}, nil
}

var theQuote = weave.Worked{
	Name:  "quote",
	Title: "A quoted current, checked",
	Question: "A quote says: inverter {{power}}, 12 V battery, battery current {{quoted}}. The datasheet has an efficiency of {{efficiency}} and a " +
		"cut-off at {{lowest}}. Does the quoted current hold?",
	Inputs: []weave.Input{
		{Name: "power", Label: "inverter, for hours", Default: "2000 W", Unit: "W", Low: "10 W", High: "100000 W"},
		{Name: "quoted", Label: "current as quoted", Default: "167 A"},
		efficiencyInput,
		{Name: "lowest", Label: "voltage at which it cuts off", Default: "10.8 V", Unit: "V", Low: "5 V", High: "120 V"},
	},
	Solve:   solveQuote,
	Helpers: []string{"parseAmperes"},
}

func solveQuote(in *weave.Inputs) (weave.Answer, error) {
	quoted := weave.Parsed(in, "quoted", parseAmperes)
	lowest := weave.In[units.Voltage](in, "lowest")
	side, err := inverter.BatterySide(inverter.DCSide{
		Machine: inverter.Machine{
			Continuous:    weave.In[units.Power](in, "power"),
			Efficiency:    weave.In[units.Ratio](in, "efficiency"),
			LowestVoltage: units.Some(lowest),
		},
		Margin: inverter.NECMargin,
	})
	if err != nil {
		return weave.Answer{}, err
	}
	verdict, err := working.Claim{
		What:     "battery current at full output",
		Stated:   quoted,
		Computed: side.Current,
		SafeSide: working.Higher,
		Findings: side.Findings(),
	}.Judge()
	if err != nil {
		return weave.Answer{}, err
	}
	return weave.Answer{
		Text: "The verdict is: {{verdict}}. With the margin of " +
			"the code, cable and fuse must be rated for " +
			"{{required}}.",
		Values: []weave.Value{
			weave.Say("verdict", verdict),
			weave.Show("required", side.Required, "A", 3),
		},
		Working:  side.Working(),
		Findings: side.Findings(),
	}, nil
}

// parseAmperes reads a current with the digits it is quoted with.
func parseAmperes(s string) (units.Printed, error) {
	p, err := units.ParsePrinted(s)
	if err != nil {
		return p, err
	}
	_, err = units.As[units.Current](p)
	return p, err
}
