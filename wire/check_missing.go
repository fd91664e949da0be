package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// missingMetal returns "metal" if it was taken to be copper.
func (c Checked) missingMetal() []string {
	if c.Quote.Metal.IsSet() {
		return nil
	}
	return []string{"metal"}
}

// missingForDrop returns what a claim of drop needs and is not stated.
func (c Checked) missingForDrop(kind ClaimKind) (missing []string) {
	q := c.Quote
	if !q.Size.IsValid() {
		missing = append(missing, "size")
	}
	if c.Circuit.Load == 0 {
		missing = append(missing, "current")
	}
	if c.OneWay == 0 {
		missing = append(missing, "length")
	}
	if !q.Voltage.IsSet() && (kind == ClaimPercent || q.Alternating) {
		missing = append(missing, "voltage")
	}
	if q.Alternating && !q.PowerFactor.IsSet() {
		missing = append(missing, "power factor")
	}
	if len(missing) == 0 {
		missing = append(missing, "a reactance, which the table does not have for "+q.Size.String())
	}
	return missing
}

// missingForAllowed returns what a size needs beside its heat to be held
// against the drop that is allowed.
func (c Checked) missingForAllowed() (missing []string) {
	if c.OneWay == 0 {
		missing = append(missing, "length")
	}
	if !c.Quote.Voltage.IsSet() {
		missing = append(missing, "voltage")
	}
	if c.Quote.Alternating && !c.Quote.PowerFactor.IsSet() {
		missing = append(missing, "power factor")
	}
	return missing
}

// missingForHeat returns what was not stated of the conductor, as far as the
// rule set asks for it.
func (c Checked) missingForHeat() (missing []string) {
	if !c.Quote.Size.IsValid() {
		return []string{"size"}
	}
	if !c.isJudged() {
		return []string{"a table: " + c.noTable()}
	}
	missing = c.missingMetal()
	if c.Quote.Insulation == 0 && c.Protection.Capacity.Governs != ByDeviceTable {
		missing = append(missing, "insulation")
	}
	return append(missing, c.missingFactors()...)
}

// Questions returns what to ask, of the installer or of the rig, so that what
// is not stated can be judged and what does not agree is explained; in the
// order in which a circuit is gone through, and none if nothing is open.
func (c Checked) Questions() []string {
	asked := c.conductorQuestions()
	asked = append(asked, c.runQuestions()...)
	return append(asked, c.deviceQuestions()...)
}

// conductorQuestions asks for size, metal and insulation.
func (c Checked) conductorQuestions() (asked []string) {
	q := c.Quote
	if !q.Size.IsValid() {
		return []string{"Which size is the conductor?"}
	}
	if !q.Metal.IsSet() {
		asked = append(asked, "Is the "+q.Size.String()+" conductor copper, aluminium or copper-clad aluminium?")
	}
	if q.Insulation == 0 && (!c.isJudged() || c.Protection.Capacity.Governs != ByDeviceTable) {
		asked = append(asked, "For what temperature is the insulation of the "+q.Size.String()+" rated?")
	}
	if !c.isJudged() {
		asked = append(asked, "Which code has an ampacity for this conductor of "+q.Size.String()+"? "+c.noTable()+".")
	}
	for _, missing := range c.missingFactors() {
		asked = append(asked, "Which code is the "+q.Size.String()+" to be held against? It needs "+missing+".")
	}
	return asked
}

// runQuestions asks for current, length and voltage.
func (c Checked) runQuestions() (asked []string) {
	q := c.Quote
	hasDrop := q.Drop.IsSet() || q.Percent.IsSet()
	wantsDrop := hasDrop || q.Allowed.IsSet()
	if c.Circuit.Load == 0 {
		asked = append(asked, "What current does the load take, and does it run for three hours or more?")
	}
	switch {
	case c.OneWay == 0 && (wantsDrop || q.Fault.IsSet()):
		asked = append(asked, "How long is the run, from the source to the load, one way?")
	case wantsDrop && q.LengthIs == LengthUnsaid && c.OneWay > 0:
		ask := "Is " + q.Length.String() + " the run one way?"
		if c.Voltage > 0 {
			together := "two conductors"
			if q.Chassis.IsSet() {
				together = "conductor and the chassis"
			}
			ask += " If so the " + together + " together drop " + short(c.Voltage, "V") + " at " + short(c.Circuit.Load, "A") + "."
		}
		asked = append(asked, ask)
	}
	if !q.Voltage.IsSet() && (q.Percent.IsSet() || q.Allowed.IsSet() || hasDrop && q.Alternating) {
		asked = append(asked, "What is the voltage at the source, of which the per cent are counted?")
	}
	switch {
	case !q.Alternating || !wantsDrop:
	case !q.PowerFactor.IsSet():
		asked = append(asked, "What is the power factor of the load?")
	case c.hasRun() && c.AlternatingDrop == (AlternatingDrop{}):
		asked = append(asked, "What is the reactance of "+q.Size.String()+"? NEC Table 9 does not have it.")
	}
	return asked
}

// deviceQuestions asks for the device, its place and what it can break.
func (c Checked) deviceQuestions() (asked []string) {
	q := c.Quote
	device, stated := c.Circuit.Device.Get()
	if !stated {
		if !q.DeviceElsewhere {
			asked = append(asked, "Which fuse or breaker protects this conductor, and where does it sit?")
		}
		return asked
	}
	if c.isJudged() && units.Exceeds(device, c.Protection.Limit) {
		asked = append(asked, "Which rule allows "+q.Device.String()+" on "+q.Size.String()+"?")
	}
	if !c.Circuit.FromSource.IsSet() {
		asked = append(asked, "How far along the conductor is the device from the source?")
	}
	if place, _ := c.placeLine(); c.Circuit.FromSource.IsSet() && !agrees(place.Verdict) {
		asked = append(asked, "What protects the "+q.FromSource.String()+" of conductor before the device?")
	}
	if !c.Circuit.Interrupting.IsSet() {
		asked = append(asked, "What fault current is the device rated to break?")
	}
	if !q.Fault.IsSet() {
		asked = append(asked, "What are the voltage and the resistance inside of the source, which say what a short draws?")
	}
	return asked
}

// short returns a quantity in four digits.
func short(v units.Value, unit string) string { return working.Number{Value: v, Unit: unit}.String() }
