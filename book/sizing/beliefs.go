package sizing

import (
	"example.com/drawbar/book/weave"
	"example.com/drawbar/inverter"
	"example.com/drawbar/units"
)

// twelveVolts is an inverter on a 12 V battery, which the rule and the
// beliefs are tried on.
func twelveVolts(power units.Power) inverter.DCSide {
	return inverter.DCSide{
		Machine: inverter.Machine{
			Continuous:    power,
			Efficiency:    88 * units.Percent,
			LowestVoltage: units.Some(10.5 * units.Volt),
		},
		Margin: inverter.NECMargin,
	}
}

func solveRule(*weave.Inputs) (weave.Answer, error) {
	side, err := inverter.BatterySide(twelveVolts(2000 * units.Watt))
	power := side.Side.Machine.Continuous
	return weave.Answer{Values: []weave.Value{
		weave.Show("power", power, "W", 4),
		weave.Show("tens", power.At(10*units.Volt), "A", 3),
		weave.Show("current", side.Current, "A", 3),
		weave.Show("required", side.Required, "A", 3),
	}}, err
}

func solveMicrowave(*weave.Inputs) (weave.Answer, error) {
	label, cooked := 1000*units.Watt, 65*units.Percent
	oven := inverter.Demand{
		Name:        "microwave",
		Power:       units.Scale(label, units.RatioOf(100*units.Percent, cooked)),
		PowerFactor: units.Some(95 * units.Percent),
	}
	machine := twelveVolts(label).Machine
	machine.ContinuousVA = units.Some(label.Apparent(100 * units.Percent))
	h, err := inverter.Check(machine, []inverter.Demand{oven})
	if err != nil {
		return weave.Answer{}, err
	}
	side, err := inverter.BatterySide(twelveVolts(oven.Power))
	return weave.Answer{
		Text: "The label says what cooks the food. At {{cooked}}, as is usual (common practice; the rating plate has the input), the plug " +
			"takes {{power}} and {{apparent}}, and the inverter lacks {{lacks}}. A 12 V battery near its end would have to give {{current}}.",
		Values: []weave.Value{
			weave.Show("cooked", cooked, "%", 2),
			weave.Show("power", h.Power, "W", 4),
			weave.Show("apparent", h.Apparent, "VA", 4),
			weave.Show("lacks", units.Minus(h.Power, machine.Continuous), "W", 3),
			weave.Show("current", side.Current, "A", 3),
		},
	}, err
}

func solveAmperes(*weave.Inputs) (weave.Answer, error) {
	power := 1500 * units.Watt
	side, err := inverter.BatterySide(twelveVolts(power))
	socket := power.At(120 * units.Volt)
	return weave.Answer{
		Text: "{{socket}} at the socket, yes. On the other side the same {{power}} are {{current}} at {{lowest}}, {{times}} times as many. A wire or " +
			"a fuse chosen for the socket's number does not last a minute there.",
		Values: []weave.Value{
			weave.Show("socket", socket, "A", 3),
			weave.Show("power", power, "W", 4),
			weave.Show("current", side.Current, "A", 3),
			weave.Show("lowest", side.Side.Machine.LowestVoltage.Or(0), "V", 3),
			weave.Show("times", units.RatioOf(side.Current, socket), "1", 2),
		},
	}, err
}

func solveIdle(*weave.Inputs) (weave.Answer, error) {
	use, err := inverter.EnergyADay(inverter.Day{
		Energy:     (60 * units.Watt).For(2 * units.Hour),
		Efficiency: 90 * units.Percent,
		Idle:       units.Some(25 * units.Watt),
		On:         units.Some(24 * units.Hour),
	})
	return weave.Answer{
		Text: "Efficiency is for what passes through. A laptop that charges for two hours a day uses {{energy}}; the loss in converting it is " +
			"{{lost}}. An own use of {{idle}} all day is {{own}}, and of what leaves the battery {{arrives}} arrives.",
		Values: []weave.Value{
			weave.Show("energy", use.Day.Energy, "Wh", 3),
			weave.Show("lost", units.Minus(use.Loads, use.Day.Energy), "Wh", 2),
			weave.Show("idle", use.Day.Idle.Or(0), "W", 2),
			weave.Show("own", use.Idle, "Wh", 3),
			weave.Show("arrives", units.RatioOf(use.Day.Energy, use.Energy), "%", 2),
		},
	}, err
}

func solveTwice(*weave.Inputs) (weave.Answer, error) {
	running := 1400 * units.Watt
	start, err := inverter.Starting(inverter.Motor{LockedRotor: 65 * units.Ampere, Voltage: 120 * units.Volt})
	if err != nil {
		return weave.Answer{}, err
	}
	rule := (2 * running).Apparent(100 * units.Percent)
	return weave.Answer{
		Text: "Look on the plate for the locked-rotor current. A compressor that runs on {{running}} and has {{locked}} there takes {{start}} " +
			"when it starts, {{short}} more than twice its watts. It hums, the lights dim, and the inverter shuts down.",
		Values: []weave.Value{
			weave.Show("running", running, "W", 4),
			weave.Show("locked", start.Motor.LockedRotor, "A", 3),
			weave.Show("start", start.Apparent, "VA", 4),
			weave.Show("short", units.Minus(start.Apparent, rule), "VA", 4),
		},
	}, nil
}

func solveRod(*weave.Inputs) (weave.Answer, error) {
	fault, err := inverter.FaultToFrame(inverter.FrameFault{
		Voltage: 120 * units.Volt,
		Earth:   units.Some(25 * units.Ohm),
		Device:  units.Some(20 * units.Ampere),
	})
	return weave.Answer{
		Text: "Without a bond, a hot wire on the frame drives {{current}} through a rod and soil of {{earth}}, which is a good rod. A breaker of " +
			"{{device}} takes that for an ordinary load and stays closed, and the frame stays live.",
		Values: []weave.Value{
			weave.Show("earth", fault.Fault.Earth.Or(0), "Ω", 2),
			weave.Show("current", fault.Current, "A", 2),
			weave.Show("device", fault.Fault.Device.Or(0), "A", 2),
		},
	}, err
}
