package plan

import (
	"slices"

	"example.com/drawbar/battery"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

const day = 24 * units.Hour

// batteries returns the described bank as package battery takes it.
func (m *maker) batteries() battery.Bank {
	b := m.rig.Bank
	return battery.Bank{
		Battery: battery.Battery{
			Chemistry: b.Chemistry, Capacity: b.Capacity, Voltage: b.Voltage, RatedOver: b.RatedOver, Usable: b.Usable, Aged: b.Aged,
			DischargeLimit: b.DischargeLimit, ChargeLimit: b.ChargeLimit, Resistance: b.Resistance, OpenCircuit: b.OpenCircuit,
			ChargeLow: b.ChargeLow, ChargeHigh: b.ChargeHigh, ChargeVoltage: b.ChargeVoltage, Cells: cellsOf(b),
		},
		Charging: battery.Charging{Absorption: m.absorption(), Compensation: b.Compensation, Coldest: b.Coldest},
		Series:   max(b.Series, 1), Parallel: max(b.Parallel, 1), CellTemperature: b.CellTemperature, Vent: b.Vent,
	}
}

// absorption returns the highest voltage that a charger puts on the bank: as
// stated for the bank, or that of the converter or of the tow vehicle's charger.
// One for another bank is left to the check of voltages.
func (m *maker) absorption() units.Opt[units.Voltage] {
	b := m.rig.Bank
	highest := b.Absorption
	if highest.IsSet() {
		return highest
	}
	nominal := units.Scale(b.Voltage, units.Ratio(max(b.Series, 1)))
	take := func(v units.Voltage) {
		if v >= nominal && !units.Exceeds(v, units.Scale(nominal, hottestCharge)) && v > highest.Or(0) {
			highest = units.Some(v)
		}
	}
	if c := m.rig.Converter; c != nil {
		take(c.Voltage)
	}
	if t := m.rig.Tow; t != nil {
		take(t.Voltage)
	}
	return highest
}

// cellsOf returns the cells of one battery, if they are stated.
func cellsOf(b Bank) units.Opt[int] {
	if b.Cells == 0 {
		return units.None[int]()
	}
	return units.Some(b.Cells)
}

// bank works out what the bank holds.
func (m *maker) bank() {
	assembly, err := battery.Assemble(m.batteries())
	if !m.ok("bank", err) {
		return
	}
	m.assembly = assembly
	m.sheet("bank", assembly.Working())
	usable, err := battery.Usable(m.batteries(), units.None[units.Current]())
	if !m.ok("bank", err) {
		return
	}
	m.sheet("bank", usable.Working())
	if b := m.rig.Bank; assembly.Bank.Charging.Absorption.IsSet() && b.Compensation.IsSet() && (b.Coldest.IsSet() || b.CellTemperature.IsSet()) {
		if v, err := battery.Compensate(m.batteries()); m.ok("bank", err) {
			m.sheet("bank", v.Working())
		}
	}
	m.plan.Bank = BankLine{Usable: usable.Energy, Charge: usable.Charge,
		Name: assembly.Bank.Battery.Chemistry.String() + ", " + units.Significant(units.In(assembly.Capacity, units.AmpereHour), 4) + " Ah, " +
			units.Significant(float64(assembly.Voltage), 4) + " V"}
}

// behind reports whether the inverter feeds a bus.
func (m *maker) behind(bus string) bool {
	b, _ := m.bus(bus)
	return b.Behind == "inverter"
}

// share is what some of the loads take on average, from the bank itself and
// through the inverter.
type share struct{ direct, inverted units.Power }

// shareOf sums the loads that are wanted. What hangs on a bus that is dead
// without shore power takes nothing.
func (m *maker) shareOf(wanted func(Load) bool) (s share) {
	for i, line := range m.book.Lines {
		switch l := m.rig.Loads[i]; {
		case !wanted(l):
		case line.Bus.Kind == loads.Direct:
			b, _ := m.bus(line.Bus.Name)
			s.direct += units.Scale(line.Average, units.RatioOf(units.One, b.ThroughConverter.Or(units.One)))
		case m.behind(line.Bus.Name):
			s.inverted += line.Average
		}
	}
	return s
}

// idles reports whether the inverter draws power for itself while a share is
// fed. Left on, it does so with nothing behind it.
func (m *maker) idles(s share) bool {
	return m.rig.Inverter != nil && (s.inverted > 0 || !m.rig.Inverter.OffWhenIdle)
}

// carried works out what a share is at the bank, with the inverter's own draw.
func (m *maker) carried(who string, s share, loop units.Power) (units.Power, bool) {
	carry := inverter.Carry{AC: s.inverted, Efficiency: units.One, DC: s.direct, Loop: loop, Idle: units.Some(0 * units.Watt)}
	if m.rig.Inverter != nil {
		carry.Efficiency = m.rig.Inverter.Efficiency
		if m.idles(s) {
			carry.Idle = m.rig.Inverter.Idle
		}
	}
	hold, err := inverter.CarryTime(carry)
	if !m.ok("inverter", err) {
		return 0, false
	}
	m.sheetOn("use", who, hold.Working())
	return hold.Power, true
}

// use works out what leaves the bank in the day.
func (m *maker) use() {
	all := m.shareOf(func(Load) bool { return true })
	u := &m.plan.Use
	u.Direct = all.direct.For(day)
	if inv := m.rig.Inverter; inv != nil {
		asked := inverter.Day{Energy: all.inverted.For(day), Efficiency: inv.Efficiency, Idle: inv.Idle, Voltage: units.Some(m.assembly.Voltage)}
		if !m.idles(all) {
			asked.On = units.Some(0 * units.Hour)
		}
		used, err := inverter.EnergyADay(asked)
		if !m.ok("inverter", err) {
			return
		}
		m.sheet("use", used.Working())
		m.heard("inverter", used.Findings()...)
		u.Inverted, u.Idle = used.Energy, used.Idle
	}
	u.IdleStated = m.rig.Inverter == nil || m.rig.Inverter.Idle.IsSet() || !m.idles(all)
	u.Energy = u.Direct + u.Inverted
	u.Average, u.Charge = u.Energy.In(day), u.Energy.At(m.assembly.Voltage)
	sheet := working.NewSheet("What leaves the bank in a day")
	sheet.Given("E_direct", u.Direct, "Wh", "direct-current loads")
	sheet.Given("E_inverted", u.Inverted, "Wh", "through the inverter, its losses and own draw included")
	sheet.Formula("E_day", u.Energy, "Wh", "together", "E_direct + E_inverted")
	sheet.Given("V_bank", m.assembly.Voltage, "V", "nominal voltage of the bank")
	sheet.Formula("Q_day", u.Charge, "Ah", "charge at the nominal voltage", "E_day / V_bank")
	sheet.Formula("P_mean", u.Average, "W", "on average", "E_day / 24")
	m.sheet("use", sheet)
	critical := m.shareOf(func(l Load) bool { return l.MustNotStop })
	if critical != (share{}) { // with nothing to carry, nothing is left on for it
		u.MustNotStop, _ = m.carried("what must not stop", critical, 0)
	}
	u.Unattended, _ = m.carried("with nobody there", m.shareOf(func(l Load) bool { return l.MustNotStop || l.Unattended }), 0)
	m.leftOn(critical)
}

// leftOn says whether the inverter's own draw is in the hold-up of what must
// not stop, if nothing behind it must run.
func (m *maker) leftOn(critical share) {
	if m.rig.Inverter == nil || critical.inverted > 0 {
		return
	}
	idle, ok := m.rig.Inverter.Idle.Get()
	if !ok || idle == 0 {
		return
	}
	f := working.Finding{
		Severity: working.Note, Rule: "inverter-left-on", Source: physics("what is on draws power"),
		Message: "Nothing behind the inverter must not stop. It is taken to be left on all the same, and what it draws by itself is in every hold-up time.",
		Numbers: []working.Number{{Name: "idle", Value: idle}, {Name: "a day", Value: idle.For(day)}},
		Fix:     "Switch it off when nothing needs it, and say so with inverter.off_when_idle.",
	}
	if m.rig.Inverter.OffWhenIdle {
		f.Rule = "inverter-switched-off"
		f.Message = "Nothing behind the inverter must not stop, and it is said to be switched off then: the hold-up times count on somebody, or on a switch, doing that."
		f.Fix = "See what switches it off with nobody there; left on it draws what is stated here."
	}
	m.find("inverter", f)
}

// lasts returns how long the bank feeds a power, from full and without sun.
func (m *maker) lasts(on string, p units.Power) (none units.Opt[units.Elapsed]) {
	if p == 0 {
		return none
	}
	hold := battery.Hold{Bank: m.batteries(), Draw: battery.Draw{Power: units.Some(p)}}
	if m.rig.Inverter != nil {
		hold.CutOff = units.Some(m.rig.Inverter.CutOff)
	}
	e, err := battery.HoldUp(hold)
	if !m.ok("bank", err) {
		return none
	}
	m.sheetOn("bank", on, e.Working())
	m.heard("bank", slices.DeleteFunc(e.Findings(), func(f working.Finding) bool {
		// A mean current decides nothing: all at once is held against the limit.
		return f.Rule == "discharge-limit-not-stated"
	})...)
	return units.Some(e.Time)
}

// holdUp works out how long the bank lasts on average, on what must not stop,
// and with nobody there.
func (m *maker) holdUp() {
	b, u := &m.plan.Bank, m.plan.Use
	b.AtAverage, b.AtMustNotStop = m.lasts("on average use", u.Average), m.lasts("on what must not stop", u.MustNotStop)
	b.AtUnattended = m.lasts("with nobody there", u.Unattended)
	if u.Loop > 0 {
		b.AverageWithLoop = m.lasts("on average use, with the loop", u.Average+u.Loop)
		if u.MustNotStop > 0 {
			b.WithLoop = m.lasts("on what must not stop, with the loop", u.MustNotStop+u.Loop)
		}
		b.UnattendedWithLoop = m.lasts("with nobody there, with the loop", u.Unattended+u.Loop)
	}
	if m.plan.Sun == nil || u.MustNotStop == 0 {
		return
	}
	// From one day to the next, with the sun of this day every day.
	short := u.MustNotStop - m.plan.Sun.Harvest.In(day)
	if units.Exceeds(short, 0) {
		with := b.Usable.Lasts(short)
		b.MustNotStopDays = units.Some(with)
		sheet := working.NewSheet("What must not stop, with the same sun every day")
		sheet.Given("P_critical", u.MustNotStop, "W", "what must not stop, on average")
		sheet.Given("E_sun", m.plan.Sun.Harvest, "Wh", "harvest of a day")
		sheet.Given("E_usable", b.Usable, "Wh", "usable energy of the bank")
		sheet.Formula("t_days", with, "d", "until the bank is down", "E_usable / (24*P_critical - E_sun)")
		m.sheetOn("bank", "with the sun", sheet)
	}
}

// array returns the panels as package solar takes them.
func (m *maker) array() solar.Array {
	r := m.rig.Roof
	return solar.Array{
		Panel: solar.Panel{Power: r.Power, Voc: r.Voc, Vmp: r.Vmp, Isc: r.Isc, Imp: r.Imp, VoltageCoefficient: r.Coefficient,
			Cells: solar.CrystallineSilicon, SeriesFuse: r.SeriesFuse},
		Series: r.Series, Parallel: m.strings(),
	}
}

// strings returns how many strings of panels there are in parallel.
func (m *maker) strings() int {
	r := m.rig.Roof
	if r.Series <= 0 {
		return 0
	}
	return r.Panels / r.Series
}

// parallel returns the strings for what their conductors must carry.
func (m *maker) parallel() solar.Strings {
	return solar.Strings{Rules: solar.NEC2017, Array: m.array(), StringFuse: m.rig.Roof.StringFuse}
}

// sun works out the day's harvest and holds the panels against their
// controller.
func (m *maker) sun() {
	r := m.rig.Roof
	if r == nil {
		return
	}
	fit, err := solar.FitController(solar.Hookup{
		Rules: solar.NEC2017, Array: m.array(), StringFuse: r.StringFuse, Coldest: r.Coldest, Hottest: r.Hottest, Bank: m.assembly.Voltage,
		Controller: solar.Controller{Kind: m.kind(), InputVoltage: r.Controller.InputLimit, Output: units.Some(r.Controller.OutputLimit)},
	})
	if !m.ok("roof", err) {
		return
	}
	m.fit = fit
	losses, err := m.losses(fit)
	if !m.ok("roof", err) {
		return
	}
	harvest, err := solar.DailyHarvest(solar.PanelDay{Peak: units.Scale(r.Power, units.Ratio(r.Panels)), Irradiation: r.Sun.Irradiation, Losses: losses,
		PowerCoefficient: r.PowerCoefficient, CellTemperature: r.Cells})
	if !m.ok("roof", err) {
		return
	}
	m.sheet("roof", harvest.Working())
	m.sheet("roof", fit.Working())
	m.heard("roof", harvest.Findings()...)
	found := fit.Findings()
	m.fewerInSeries(fit, found)
	m.heard("roof", found...)
	passed, ok := m.clipped(harvest)
	if !ok {
		return
	}
	m.plan.Sun = m.roofLine(passed, fit)
	m.aboveAir(r.Sun)
}

// aboveAir holds the stated irradiation against what reaches the top of the
// air on that day.
func (m *maker) aboveAir(s Sun) {
	latitude, ok := s.Latitude.Get()
	if !ok {
		return
	}
	sun, err := solar.SunOn(solar.DayAt{Latitude: latitude, OfYear: s.DayOfYear})
	if !m.ok("roof", err) {
		return
	}
	m.sheet("roof", sun.Working())
	m.heard("roof", sun.Findings()...)
	if units.Exceeds(s.Irradiation, sun.AboveAir) {
		m.find("roof", working.Finding{
			Severity: working.Caution, Rule: "more-sun-than-there-is", Source: physics("irradiation above the air, FAO-56 equation 21"),
			Message: "The irradiation stated is more than reaches a level surface above the air on that day.",
			Numbers: []working.Number{{Name: "stated", Value: s.Irradiation}, {Name: "above the air", Value: sun.AboveAir}},
			Fix:     "Use the horizontal irradiation of the month, not that of a tilted rack or of the year.",
		})
	}
}
