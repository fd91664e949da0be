package battery

import "example.com/drawbar/units"

// A UsableCharge is the result of [Usable].
type UsableCharge struct {
	Assembly Assembly // the bank, with the figures in force
	// Current is the steady current of the bank that was asked for; not given,
	// the capacity is taken as marked.
	Current units.Opt[units.Current]
	// Delivery is the whole charge at Current; zero if Current is not given.
	Delivery   Delivery
	Factor     units.Ratio  // left of the capacity at Current, 1 if not given
	Aged       units.Ratio  // left of the capacity by age
	Multiplier units.Ratio  // of the cold, 1 or more
	Available  units.Charge // from full to empty, at Current, aged and cold
	Charge     units.Charge // usable: Available times the depth
	Energy     units.Energy // Charge at the nominal voltage
}

// Usable returns what may be taken out of b between full and the depth that
// its datasheet or its chemistry allows, at the steady bank current at:
//
//	Available = C · Factor · Aged / Multiplier
//	Charge    = Available · depth
//	Energy    = Charge · V
//
// Factor is that of [Deliver]. The depth is a part of what there is at that
// current and not of the marked capacity. To compare a lead bank with a
// lithium bank compare Energy: they differ in volts, depth and Factor, and
// ampere-hours show none of it. V is the nominal voltage that b gives; for a
// closer figure give the mean voltage under load.
//
// A field outside the range that [Battery] and [Bank] state, a current that
// is not above 0, or a result that no float64 holds gives a
// [*units.RangeError].
func Usable(b Bank, at units.Opt[units.Current]) (UsableCharge, error) {
	const op = "battery.Usable"
	a, err := b.assemble(op)
	if err != nil {
		return UsableCharge{}, err
	}
	return a.usable(op, at)
}

func (a Assembly) usable(op string, at units.Opt[units.Current]) (UsableCharge, error) {
	u := UsableCharge{
		Assembly: a, Current: at, Factor: 1,
		Aged: a.Bank.Battery.Aged.Or(1), Multiplier: a.Bank.Multiplier.Or(1),
	}
	if i, ok := at.Get(); ok {
		var err error
		u.Delivery, err = Discharge{Rating{a.Capacity, a.RatedOver}, a.Exponent, i}.deliver(op)
		if err != nil {
			return UsableCharge{}, err
		}
		u.Factor = u.Delivery.Factor
	}
	u.Available = units.Scale(a.Capacity, u.Factor*u.Aged/u.Multiplier)
	u.Charge = units.Scale(u.Available, a.Depth)
	u.Energy = u.Charge.At(a.Voltage)
	if err := units.Above[units.Energy](0).Check(op, "Energy", u.Energy); err != nil {
		return UsableCharge{}, err
	}
	return u, nil
}
