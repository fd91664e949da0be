package loads

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Link is the inverter or converter through which a bank feeds a bus, as far
// as a day's energy needs to know it.
type Link struct {
	Efficiency units.Ratio // of what runs through it, > 0, <= 1; not that of its idle draw
	// Idle is what it takes from the bank as long as it is on, load or none,
	// >= 0. Not given counts as nothing, and a finding says so.
	Idle units.Opt[units.Power]
	// On is how long a day it is on, 0 h to 24 h. Not given is 24 h.
	On   units.Opt[units.Elapsed]
	Bank units.Voltage // of the bank, > 0
}

// A BankSide is the result of [FromBank].
type BankSide struct {
	Total  Total         // as given
	Link   Link          // as used
	On     units.Elapsed // a day, as used
	Loads  units.Energy  // a day from the bank for the loads: their energy over Efficiency
	Idle   units.Energy  // a day from the bank for the link itself
	Energy units.Energy  // a day from the bank, both
	Charge units.Charge  // Energy at the voltage of the bank

	Average units.Power // Energy spread over 24 hours
	// MustNotStop is what the loads so marked take from the bank a day, the
	// whole idle draw included, since the link stays on for them; nothing if
	// there are none.
	MustNotStop        units.Energy
	MustNotStopAverage units.Power // spread over 24 hours
}

// FromBank returns what the loads of a bus take from the bank behind a link:
//
//	E_bank = E/η + P_idle · t_on
//	Q = E_bank/V_bank
//
// Energy crosses the link and charge does not. One efficiency stands for the
// whole day; a large inverter under a small load has a worse one.
//
// A field of the link out of the range that [Link] states, a total whose
// energies are negative or not finite, and a result that no float64 holds are
// each a [*units.RangeError]. The BankSide is then the zero value.
func FromBank(t Total, via Link) (BankSide, error) {
	const op = "loads.FromBank"
	var f faults
	f.add(upToOne().Check(op, "Efficiency", via.Efficiency))
	f.add(checkOpt(op, "Idle", via.Idle, units.AtLeast[units.Power](0)))
	f.add(checkOpt(op, "On", via.On, units.Between(0, day)))
	f.add(units.Above[units.Voltage](0).Check(op, "Bank", via.Bank))
	f.add(units.AtLeast[units.Energy](0).Check(op, "Total.Energy", t.Energy))
	f.add(units.AtLeast[units.Energy](0).Check(op, "Total.MustNotStop.Energy", t.MustNotStop.Energy))
	if err := f.join(); err != nil {
		return BankSide{}, err
	}
	b := BankSide{Total: t, Link: via, On: via.On.Or(day)}
	b.Loads = units.Scale(t.Energy, 1/via.Efficiency)
	b.Idle = via.Idle.Or(0).For(b.On)
	b.Energy = b.Loads + b.Idle
	b.Charge = b.Energy.At(via.Bank)
	b.Average = b.Energy.In(day)
	if t.MustNotStop.Lines > 0 {
		b.MustNotStop = units.Scale(t.MustNotStop.Energy, 1/via.Efficiency) + b.Idle
	}
	b.MustNotStopAverage = b.MustNotStop.In(day)
	f.add(units.AtLeast[units.Energy](0).Check(op, "Energy", b.Energy))
	f.add(units.AtLeast[units.Energy](0).Check(op, "MustNotStop", b.MustNotStop))
	f.add(units.AtLeast[units.Charge](0).Check(op, "Charge", b.Charge))
	if err := f.join(); err != nil {
		return BankSide{}, err
	}
	return b, nil
}

// Working returns how the bank side came about, step by step.
func (b BankSide) Working() *working.Sheet {
	s := working.NewSheet("A day of " + b.Total.Bus.Name + " from the bank")
	s.Given("E", b.Total.Energy, "Wh", "all loads of the bus, a day")
	s.Given("η", b.Link.Efficiency, "1", "efficiency of what runs through")
	s.Given("P_idle", b.Link.Idle.Or(0), "W", "idle power from the bank"+b.unsaid())
	s.Given("t_on", b.On, "h", "on, a day")
	s.Given("V_bank", b.Link.Bank, "V", "voltage of the bank")
	s.Formula("E_loads", b.Loads, "Wh", "from the bank for the loads", "E / η")
	s.Formula("E_idle", b.Idle, "Wh", "from the bank for being on", "P_idle * t_on")
	s.Formula("E_bank", b.Energy, "Wh", "from the bank, a day", "E_loads + E_idle")
	s.Formula("P_mean", b.Average, "W", "mean over 24 hours", "E_bank / 24")
	s.Formula("Q", b.Charge, "Ah", "charge from the bank, a day", "E_bank / V_bank")
	if b.Total.MustNotStop.Lines > 0 {
		s.Given("E_must", b.Total.MustNotStop.Energy, "Wh", "what must not stop, a day on the bus")
		s.Formula("E_must_bank", b.MustNotStop, "Wh", "from the bank, the link on for it", "E_must / η + E_idle")
		s.Formula("P_must", b.MustNotStopAverage, "W", "mean over 24 hours", "E_must_bank / 24")
	}
	return s
}

// unsaid says that no idle power was stated, if so.
func (b BankSide) unsaid() string {
	if b.Link.Idle.IsSet() {
		return ""
	}
	return ", not stated: counted as none"
}

// Findings returns what needs attention, worst first: an idle power that was
// not stated, and one that takes more than the loads it is there for.
func (b BankSide) Findings() []working.Finding {
	if !b.Link.Idle.IsSet() {
		return []working.Finding{{
			Severity: working.Caution,
			Rule:     "idle-not-stated",
			Message:  "The idle power is not stated and counts as none; it can be more than all the loads.",
			Numbers:  []working.Number{{Name: "loads", Value: b.Loads}, {Name: "on, a day", Value: b.On}},
			Fix:      "Take it from the datasheet, or measure the input with nothing on.",
			Source:   working.Source{Title: "idle power counts for every hour that an inverter is on", Provenance: working.Derived},
		}}
	}
	carried, what := b.Loads, "loads"
	if b.Total.MustNotStop.Lines > 0 {
		carried, what = units.Minus(b.MustNotStop, b.Idle), "loads that must not stop"
	}
	if !units.Exceeds(b.Idle, carried) {
		return nil
	}
	return []working.Finding{{
		Severity: working.Note,
		Rule:     "idle-above-loads",
		Message:  "Being on takes more from the bank than the " + what + ".",
		Numbers:  []working.Number{{Name: "idle", Value: b.Idle}, {Name: what, Value: carried}},
		Fix:      "Feed them from direct current or from a small inverter of their own, and switch this one off between uses.",
		Source:   working.Source{Title: "idle power counts for every hour that an inverter is on", Provenance: working.Derived},
	}}
}
