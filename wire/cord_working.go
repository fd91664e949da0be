package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

var (
	cordSource1 = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017 and 2023",
		Place: "Table 400.5(A)(1)", Provenance: working.Read}
	cordSource2 = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017 and 2023",
		Place: "Table 400.5(A)(2)", Provenance: working.Read}
	cordBundle = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017 and 2023",
		Place: "Table 400.5(A)(3)", Provenance: working.Read}
	cordAmbient = working.Source{Body: "NFPA", Title: "70, National Electrical Code", Edition: "2017",
		Place: "400.5(A), which refers to Table 310.15(B)(2)(a)", Provenance: working.Memory}
	cordCoil     = working.Source{Title: "a coiled or covered cord cannot give off its heat", Provenance: working.CommonPractice}
	cordUpstream = working.Source{Title: "an adapter puts a cord behind a device larger than its own", Provenance: working.CommonPractice}
)

// Rule returns the table that governed.
func (c CordCapacity) Rule() working.Source {
	if c.Cord.Type == PortableCable {
		return cordSource2
	}
	return cordSource1
}

// column returns the letter of the column and what it is for.
func (x Cord) column() string {
	switch {
	case x.Type == PortableCable:
		return [...]string{"column D, single", "column E, two carry current", "column F, three carry current"}[min(max(x.Conductors, 1), 3)-1]
	case x.Type == HeaterCord:
		return "heater cords"
	case x.Conductors >= 3:
		return "column A, three carry current"
	}
	return "column B, two carry current"
}

// Working returns how the ampacity came about, step by step.
func (c CordCapacity) Working() *working.Sheet {
	x := c.Cord
	s := working.NewSheet("Ampacity of a flexible cord of " + x.Size.String())
	row := x.Size.String() + ", " + x.column()
	if x.Type == PortableCable {
		row += ", " + x.Rating.String()
	}
	s.LookUp("I_table", c.Table, "A", "ampacity by the table", working.Lookup{Source: c.Rule(), Key: x.Size.String(), Row: row})
	if x.Rating != 0 {
		s.LookUp("k_ambient", c.Ambient, "1", "correction for the ambient temperature", working.Lookup{Source: cordAmbient,
			Key: x.Ambient.String(), Row: "band with " + x.Ambient.String() + ", " + x.Rating.String()})
	} else {
		s.Given("k_ambient", c.Ambient, "1", "no correction: 30 °C, as the table")
	}
	few := "not more than three conductors"
	if x.Conductors > 3 {
		few = units.Significant(float64(x.Conductors), 4) + " conductors"
	}
	s.LookUp("k_bundle", c.Bundle, "1", "adjustment for conductors together", working.Lookup{Source: cordBundle, Key: few, Row: few})
	s.Formula("I_z", c.Current, "A", "ampacity", "I_table * k_ambient * k_bundle")
	s.Given("I_load", x.Load, "A", "greatest current of the load")
	s.Test("load against the cord", "I_load <= I_z", !units.Exceeds(x.Load, c.Current))
	if device, ok := x.Device.Get(); ok {
		s.Given("I_device", device, "A", "device before the cord")
		s.Test("device against the cord", "I_device <= I_z", !units.Exceeds(device, c.Current))
	}
	return s
}

// Findings returns what is wrong or missing, worst first.
func (c CordCapacity) Findings() (f []working.Finding) {
	x := c.Cord
	most := working.Number{Name: "ampacity of the cord", Value: c.Current}
	load := working.Number{Name: "load", Value: x.Load}
	if units.Exceeds(x.Load, c.Current) {
		f = append(f, working.Finding{
			Severity: working.Danger, Rule: "cord-above-table", Source: c.Rule(), Numbers: []working.Number{load, most},
			Message: "The load is above what this cord may carry, whatever its drop: it overheats in normal use, and the breaker before it may never object.",
			Fix:     "Use a cord of a larger size, no longer than needed.",
		})
	}
	device, stated := x.Device.Get()
	switch {
	case !stated:
		f = append(f, working.Finding{
			Severity: working.Note, Rule: "cord-device-not-stated", Source: c.Rule(), Numbers: []working.Number{most},
			Message: "The device before the cord is not stated, so it is not judged.",
			Fix:     "Read the breaker at the pedestal or the wall.",
		})
	case units.Exceeds(device, c.Current):
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "cord-behind-larger-device", Source: cordUpstream,
			Numbers: []working.Number{{Name: "device", Value: device}, most},
			Message: "The device before the cord is above what the cord may carry: only what the cord feeds protects it from overload, and damage in it is cleared late.",
			Fix:     "Tap nothing before the main of the vehicle, keep the cord in sight, and use a cord of the device's rating where there is one.",
		})
	}
	if x.Coiled {
		f = append(f, working.Finding{
			Severity: working.Caution, Rule: "cord-coiled", Source: cordCoil, Numbers: []working.Number{load, most},
			Message: "The cord is coiled or covered. The table is for a cord laid out in air; in a coil the same current can melt it.",
			Fix:     "Lay the cord out in its whole length, in the open.",
		})
	}
	working.Sort(f)
	return f
}
