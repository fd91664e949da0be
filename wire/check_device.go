package wire

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// deviceLine holds the device against the load below it and the limit above it.
// It agrees if it is the smallest rating for the load or the greatest that the
// conductor may have; another that carries the load errs to the safe side.
func (c Checked) deviceLine() (CheckedClaim, bool) {
	if c.Quote.DeviceElsewhere {
		return CheckedClaim{}, false
	}
	l := CheckedClaim{Kind: ClaimDevice, Stated: asStated(c.Quote.Device)}
	p := c.Protection
	device, stated := c.Circuit.Device.Get()
	if c.isJudged() {
		l.Computed, l.Source = p.Limit.String()+" at most", p.LimitSource()
		if stated {
			l.Difference = units.Some(units.RatioOf(units.Minus(device, p.Limit), p.Limit))
		}
	}
	switch {
	case !stated:
		l.Rule = needs([]string{"device"})
	case units.Exceeds(c.needed(), device):
		l.Verdict, l.Rule = working.Disagree, "below the "+c.needed().String()+" that the load needs"
		if c.Quote.Continuous {
			l.Source = necContinuous
		}
	case !c.isJudged():
		l.Rule = needs(c.missingForHeat())
	case c.Circuit.Load == 0:
		l.Rule = needs([]string{"current"})
	case units.Compare(device, p.Smallest) == 0:
		l.Verdict, l.Rule = working.Agree, "smallest rating for the load, within the limit by "+p.limitName()
	case units.Compare(device, p.ratingWithin(p.Limit)) == 0:
		l.Verdict, l.Rule = working.Agree, "greatest rating within the limit by "+p.limitName()
	default:
		l.Verdict, l.Rule = working.AgreeConservative, "above the load, below the limit by "+p.limitName()
	}
	return l.unlessMissing(c.missingForHeat()), true
}

// needed returns what the device must carry: 125 % of a load that runs for
// hours, else the load; 0 if none is known.
func (c Checked) needed() units.Current {
	if c.Quote.Continuous {
		return units.Scale(c.Circuit.Load, continuousFactor)
	}
	return c.Circuit.Load
}

// placeLine holds the place of the device against how far it may be.
func (c Checked) placeLine() (CheckedClaim, bool) {
	if !c.Circuit.Device.IsSet() {
		return CheckedClaim{}, false
	}
	l := CheckedClaim{Kind: ClaimPlace, Stated: asStated(c.Quote.FromSource)}
	p := Protection{Circuit: c.Circuit}
	l.Source = p.placeSource()
	if c.Quote.Rules.isNEC() {
		l.Source = necTaps
	}
	from, stated := c.Circuit.FromSource.Get()
	if !stated {
		l.Rule = needs([]string{"distance from the source"})
		return l, true
	}
	l.Verdict, l.Rule = working.Agree, "at the source"
	if from > 0 {
		l.Rule = "within the reach of " + c.Quote.Rules.String()
	}
	for _, f := range p.placeFindings() {
		if f.Rule == "place-from-memory" { // within the reach, and a note says so
			l.Source = f.Source
			continue
		}
		l.Rule, l.Source = f.Rule, f.Source
		switch {
		case f.Severity >= working.Caution:
			l.Verdict = working.Disagree
		default:
			l.Verdict = working.NotStated
		}
	}
	return l, true
}

// interruptingLine holds what the device can break against the short there.
func (c Checked) interruptingLine() (CheckedClaim, bool) {
	breaks, stated := c.Circuit.Interrupting.Get()
	if !stated && !c.Circuit.Device.IsSet() {
		return CheckedClaim{}, false
	}
	l := CheckedClaim{Kind: ClaimInterrupting, Stated: asStated(c.Quote.Interrupting), Source: ohmsLaw}
	fault := c.AtDevice.Current
	if fault > 0 {
		l.Computed = units.Significant(float64(fault), 4) + " A at least"
	}
	switch {
	case !stated:
		l.Rule = needs([]string{"interrupting rating"})
	case fault == 0:
		l.Rule = needs([]string{"source of fault current"})
	default:
		l.Verdict, l.Rule = working.Agree, "not below the short at the device"
		l.Difference = units.Some(units.RatioOf(units.Minus(breaks, fault), fault))
	}
	return l, true
}
