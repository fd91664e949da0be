package plan

import (
	"strconv"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// roofLine is what the plan says of the panels on their controller.
func (m *maker) roofLine(harvest units.Energy, fit solar.Fit) *SunLine {
	r := m.rig.Roof
	line := &SunLine{
		Harvest: harvest, Panels: r.Panels, Series: r.Series, Strings: m.strings(), Peak: fit.Peak,
		Coldest: r.Coldest, ColdOpen: fit.Cold.Voltage, Standard: fit.Cold.Standard,
		Short: fit.Currents.ShortCircuit, Required: fit.Currents.Required,
		Controller: ControllerLine{Kind: fit.Hookup.Controller.Kind, InputLimit: r.Controller.InputLimit,
			OutputLimit: r.Controller.OutputLimit, Offered: fit.Offered},
	}
	if used := m.plan.Use.Energy; used > 0 {
		line.Share = units.RatioOf(harvest, used)
		s := working.NewSheet("The sun of the day against its use")
		s.Given("E_sun", harvest, "Wh", "harvest of the day")
		s.Given("E_day", used, "Wh", "what leaves the bank")
		s.Formula("x", line.Share, "%", "part of the use that the sun brings", "100 * E_sun / E_day")
		m.sheet("roof", s)
	}
	return line
}

// kind returns the kind of the controller, and says so if nobody did.
func (m *maker) kind() solar.ControllerKind {
	c := m.rig.Roof.Controller
	if c.Kind != 0 {
		return c.Kind
	}
	m.find("roof", working.Finding{
		Severity: working.Note, Rule: "controller-kind-not-stated", Source: physics("a switching controller ties the panels to the bank"),
		Numbers: []working.Number{{Name: "output limit", Value: c.OutputLimit}},
		Message: "Whether the controller converts (MPPT) or switches (PWM) is not stated. It is taken for MPPT; a PWM controller brings less.",
		Fix:     "Look on its label, and give kind.",
	})
	return solar.MPPT
}

// losses returns the losses of the description and, with a PWM controller,
// what the panels lose by working at the voltage of the bank.
func (m *maker) losses(fit solar.Fit) (solar.Losses, error) {
	var list []solar.Loss
	for _, l := range m.rig.Roof.Losses {
		list = append(list, solar.Loss{Name: l.Name, Fraction: l.Lost})
	}
	if fit.Hookup.Controller.Kind == solar.PWM && units.Exceeds(fit.Peak, fit.Power) {
		lost := units.One - units.RatioOf(fit.Power, fit.Peak)
		list = append(list, solar.Loss{Name: "panels tied to the bank by the PWM controller", Fraction: lost})
		s := working.NewSheet("What is lost with the panels tied to the bank")
		s.Given("P_bank", fit.Power, "W", "into the bank in full sun")
		s.Given("P", fit.Peak, "W", "nameplate power of the array")
		s.Formula("x", lost, "%", "lost", "100 * (1 - P_bank / P)")
		m.sheet("roof", s)
	}
	return solar.NewLosses(list...)
}

// fewerInSeries puts into the finding about a string above its controller what
// the most panels in series that the controller withstands would give.
func (m *maker) fewerInSeries(fit solar.Fit, found []working.Finding) {
	for i := range found {
		if found[i].Rule != "string-above-controller" {
			continue
		}
		if mend, ok := m.shorterStrings(fit); ok {
			found[i].Fix = mend
		}
	}
}

// shorterStrings looks for whole strings that the controller withstands.
func (m *maker) shorterStrings(fit solar.Fit) (mend string, ok bool) {
	h := fit.Hookup
	panels, limit := m.rig.Roof.Panels, h.Controller.InputVoltage
	for series := h.Array.Series - 1; series > 0; series-- {
		if panels%series != 0 {
			continue
		}
		h.Array.Series, h.Array.Parallel = series, panels/series
		other, err := solar.FitController(h)
		if err != nil || units.Exceeds(other.Cold.Voltage, limit) || !units.Exceeds(other.Vmp, h.Bank) {
			continue
		}
		m.sheetOn("roof", "mended", other.Working())
		strings := "the panels into " + strconv.Itoa(h.Array.Parallel) + " strings of " + strconv.Itoa(series) + ", in parallel"
		if series == 1 {
			strings = "the " + strconv.Itoa(panels) + " panels in parallel"
		}
		text := "Put " + strings + ": " + in(other.Cold.Voltage, "V", 3) + " on the coldest morning, " +
			in(other.Currents.ShortCircuit, "A", 4) + " in short circuit, for which the conductors from the roof need " +
			in(other.Currents.Required, "A", 3) + "; "
		switch other.Currents.Fusing {
		case solar.FusingNeeded:
			text += "each string then needs a fuse; "
		case solar.FusingNotJudged:
			text += "whether each string then needs a fuse is not judged; "
		}
		return text + "or use a controller for a higher voltage.", true
	}
	return "", false
}
