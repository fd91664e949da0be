package usable

import (
	"example.com/drawbar/battery"
	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
)

// Numbers of the prose.
var (
	theAssumed      = weave.Numbers{Name: "assumed", Solve: solveAssumed}
	spreadOfTheRule = weave.Numbers{Name: "spread", Solve: solveSpread}
	thePictured     = weave.Numbers{Name: "pictured", Solve: solvePictured}
	theThirds       = weave.Numbers{Name: "thirds", Solve: solveThirds}
	thePractice     = weave.Numbers{Name: "practice", Solve: solvePractice}
	theDangers      = weave.Numbers{Name: "danger", Solve: solveDangers}
)

// solveAssumed shows the defaults of every chemistry.
func solveAssumed(*weave.Inputs) (weave.Answer, error) {
	var values []weave.Value
	for _, c := range []struct {
		name      string
		chemistry battery.Chemistry
	}{
		{"flooded", battery.Flooded}, {"agm", battery.AGM}, {"gel", battery.Gel},
		{"lithium", battery.LithiumIronPhosphate},
	} {
		f, err := c.chemistry.Figures()
		if err != nil {
			return weave.Answer{}, err
		}
		values = append(values,
			weave.Show(c.name+"_depth", f.PlanningDepth.Value, "%", 2),
			weave.Show(c.name+"_over", f.RatedOver.Value, "h", 2),
			weave.Show(c.name+"_k", f.Exponent.Value, "1", 3),
			weave.Show(c.name+"_low", f.ExponentLow.Value, "1", 3),
			weave.Show(c.name+"_high", f.ExponentHigh.Value, "1", 3),
		)
	}
	lead, err := battery.Flooded.Figures()
	if err != nil {
		return weave.Answer{}, err
	}
	lithium, err := battery.LithiumIronPhosphate.Figures()
	values = append(values,
		weave.Say("lead_source", lead.PlanningDepth.Source),
		weave.Say("lithium_source", lithium.PlanningDepth.Source),
		weave.Say("k_source", lead.Exponent.Source),
		weave.Say("lithium_k_source", lithium.Exponent.Source),
	)
	return weave.Answer{Values: values}, err
}

// leadBattery is the flooded battery of the first example.
func leadBattery() battery.Battery {
	return battery.Battery{
		Chemistry: battery.Flooded,
		Capacity:  200 * units.AmpereHour,
		Voltage:   12 * units.Volt,
		RatedOver: units.Some(20 * units.Hour),
		Exponent:  units.Some(1.2 * units.One),
		Usable:    units.Some(50 * units.Percent),
	}
}

func single(b battery.Battery) battery.Bank { return battery.Bank{Battery: b, Series: 1, Parallel: 1} }

// solveSpread discharges it by the ends of the published range of exponents.
func solveSpread(*weave.Inputs) (weave.Answer, error) {
	f, err := battery.Flooded.Figures()
	if err != nil {
		return weave.Answer{}, err
	}
	rating := battery.Rating{Capacity: leadBattery().Capacity, Over: f.RatedOver.Value}
	least, err := battery.Deliver(battery.Discharge{Rating: rating, Exponent: f.ExponentLow.Value, Current: 40 * units.Ampere})
	if err != nil {
		return weave.Answer{}, err
	}
	most, err := battery.Deliver(battery.Discharge{Rating: rating, Exponent: f.ExponentHigh.Value, Current: 40 * units.Ampere})
	return weave.Answer{Values: []weave.Value{
		weave.Show("least", least.Factor, "%", 3),
		weave.Show("most", most.Factor, "%", 3),
	}}, err
}

// solvePictured names what the figures draw.
func solvePictured(*weave.Inputs) (weave.Answer, error) {
	lead := leadBattery()
	run, err := holdUp(picturedLithium(), 10*units.Watt)
	if err != nil {
		return weave.Answer{}, err
	}
	cross, err := crossing()
	return weave.Answer{Values: []weave.Value{
		weave.Show("cross", cross, "W", 2),
		weave.Show("capacity", lead.Capacity, "Ah", 3),
		weave.Show("over", lead.RatedOver.Or(0), "h", 3),
		weave.Show("lithium", run.Usable.Assembly.Capacity, "Ah", 3),
		weave.Show("most", run.MostPower.Or(0), "W", 4),
	}}, err
}

// crossing returns the power above which the lithium bank of the figure lasts
// longer than the lead bank.
func crossing() (units.Power, error) {
	for power := 10 * units.Watt; ; power += units.Watt {
		lead, err := holdUp(picturedLead(), power)
		if err != nil {
			return 0, err
		}
		lithium, err := holdUp(picturedLithium(), power)
		if err != nil || lithium.Time > lead.Time {
			return power, err
		}
	}
}

// solvePractice is what an inverter takes that nobody uses.
func solvePractice(*weave.Inputs) (weave.Answer, error) {
	idle, night := 20*units.Watt, 10*units.Hour
	use, err := battery.Usable(single(leadBattery()), units.Some(40*units.Ampere))
	return weave.Answer{Values: []weave.Value{
		weave.Show("idle", idle, "W", 2),
		weave.Show("night", night, "h", 2),
		weave.Show("taken", idle.For(night), "Wh", 3),
		weave.Show("share", units.RatioOf(idle.For(night), use.Energy), "%", 2),
	}}, err
}

// solveDangers gives the numbers of the caution.
func solveDangers(*weave.Inputs) (weave.Answer, error) {
	air, err := battery.Ventilate(single(leadBattery()))
	if err != nil {
		return weave.Answer{}, err
	}
	values := []weave.Value{
		weave.Show("air", air.Flow, "m³/h", 3),
		weave.Show("opening", air.Opening, "cm²", 3),
	}
	for _, state := range []struct {
		name   string
		charge units.Ratio
	}{{"full", 100 * units.Percent}, {"half", 50 * units.Percent}, {"quarter", 25 * units.Percent}} {
		f, err := battery.FreezingPoint(state.charge)
		if err != nil {
			return weave.Answer{}, err
		}
		values = append(values, weave.Show(state.name, f.Point, "°C", 2))
	}
	pair, err := battery.Assemble(lithiumBank(140*units.AmpereHour, 2))
	if err != nil {
		return weave.Answer{}, err
	}
	short, err := battery.UnderLoad(battery.Circuit{
		OpenCircuit: pair.OpenCircuit,
		Internal:    pair.Resistance.Or(0),
		Draw:        battery.Draw{Resistance: units.Some(0 * units.Ohm)},
	})
	if err != nil {
		return weave.Answer{}, err
	}
	leftOn := lithiumBank(140*units.AmpereHour, 2)
	leftOn.Charging = battery.Charging{
		Absorption: units.Some(14.4 * units.Volt), Compensation: units.Some(-4 * units.Millivolt), Coldest: units.Celsius(-10),
	}
	charge, err := battery.Compensate(leftOn)
	return weave.Answer{Values: append(values,
		weave.Show("charge_low", pair.ChargeLow, "°C", 2),
		weave.Show("set", charge.Absorption, "V", 3),
		weave.Show("slope", -charge.Compensation, "mV", 1),
		weave.Show("morning", charge.Coldest, "°C", 2),
		weave.Show("cold_volts", charge.Voltage, "V", 3),
		weave.Show("most_volts", charge.Limit.Or(0), "V", 3),
		weave.Show("short", short.Current, "kA", 2),
	)}, err
}
