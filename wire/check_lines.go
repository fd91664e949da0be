package wire

import (
	"slices"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A ClaimKind is what a claim of a [Quote] is about.
type ClaimKind uint8

const (
	// ClaimCurrent is the current that the load takes.
	ClaimCurrent ClaimKind = iota
	// ClaimDrop is the drop in volts.
	ClaimDrop
	// ClaimPercent is the drop in per cent.
	ClaimPercent
	// ClaimAmpacity is what the conductor may carry.
	ClaimAmpacity
	// ClaimSize is that the size is enough.
	ClaimSize
	// ClaimDevice is the rating of the device.
	ClaimDevice
	// ClaimPlace is where the device sits.
	ClaimPlace
	// ClaimInterrupting is the interrupting rating of the device.
	ClaimInterrupting
)

var claimWords = []string{"current", "drop in volts", "drop in per cent", "ampacity", "size", "device", "place of the device", "interrupting rating"}

// String returns "current", "drop in volts" and the like.
func (k ClaimKind) String() string { return wordOf(claimWords, uint8(k)) }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (k ClaimKind) MarshalText() ([]byte, error) {
	return wordText("wire.ClaimKind.MarshalText", claimWords, uint8(k))
}

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError] and leaves k alone.
func (k *ClaimKind) UnmarshalText(text []byte) error {
	i, err := readWord("kind of claim", claimWords, text)
	if err == nil {
		*k = ClaimKind(i)
	}
	return err
}

// A CheckedClaim is what became of one claim.
type CheckedClaim struct {
	Kind     ClaimKind       // what it is about
	Verdict  working.Verdict // what became of it
	Stated   string          // as printed; empty if it is not stated
	Computed string          // what it was held against; empty if an input is missing
	// Difference is stated less computed over computed; not given where there is
	// no computed number.
	Difference units.Opt[units.Ratio]
	// Rule is what decided, in words: the width of agreement, the comparison, the
	// rule of the danger, or what is missing.
	Rule   string
	Source working.Source // of what Computed rests on
}

// String returns the claim in one line, "drop in volts, disagree: stated 0.35 V,
// computed 0.7 V, 50 % low; 5 % (common practice)".
func (l CheckedClaim) String() string {
	var b strings.Builder
	b.WriteString(l.Kind.String() + ", " + l.Verdict.String() + ": ")
	if l.Stated == "" {
		b.WriteString("not stated")
	} else {
		b.WriteString("stated " + l.Stated)
	}
	if l.Computed != "" {
		b.WriteString(", computed " + l.Computed)
	}
	if r, ok := l.Difference.Get(); ok && r != 0 {
		side := " high"
		if r < 0 {
			r, side = -r, " low"
		}
		b.WriteString(", " + units.Significant(units.In(r, units.Percent), 2) + " %" + side)
	}
	if l.Rule != "" {
		b.WriteString("; " + l.Rule)
	}
	return b.String()
}

// Lines returns what became of each claim that is stated, and of those that a
// circuit should not be without: size, device, its place and its interrupting
// rating. The slice is the caller's.
func (c Checked) Lines() []CheckedClaim {
	found := c.Findings()
	var lines []CheckedClaim
	for _, line := range [...]func(Checked) (CheckedClaim, bool){Checked.currentLine, Checked.dropLine, Checked.percentLine, Checked.ampacityLine,
		Checked.sizeLine, Checked.deviceLine, Checked.placeLine, Checked.interruptingLine} {
		l, ok := line(c)
		if !ok {
			continue
		}
		for _, f := range found {
			if isDangerous(f) && claimOf(f.Rule) == l.Kind {
				l.Verdict, l.Rule, l.Source = working.Unsafe, "rule "+f.Rule, f.Source
				break
			}
		}
		lines = append(lines, l)
	}
	return lines
}

// Verdict returns the worst of the lines: "unsafe" beats "disagree", and that
// "not stated", which beats the two ways to agree.
func (c Checked) Verdict() working.Verdict {
	if slices.ContainsFunc(c.Findings(), isDangerous) {
		return working.Unsafe
	}
	worst := working.Agree
	for _, l := range c.Lines() {
		if rank(l.Verdict) > rank(worst) {
			worst = l.Verdict
		}
	}
	return worst
}

// rank orders verdicts, the worst last.
func rank(v working.Verdict) int {
	return slices.Index([]working.Verdict{working.Agree, working.AgreeConservative, working.NotStated, working.Disagree, working.Unsafe}, v)
}

func isDangerous(f working.Finding) bool { return f.Severity >= working.Danger }

// claimOf returns which claim a danger belongs to: what no other has is about
// the size.
func claimOf(rule string) ClaimKind {
	switch rule {
	case "run-cannot-carry":
		return ClaimDrop
	case "no-device-stated", "device-above-limit", "device-above-any-table", "far-fault-too-weak":
		return ClaimDevice
	case "device-far-from-source":
		return ClaimPlace
	case "interrupting-too-low":
		return ClaimInterrupting
	}
	return ClaimSize
}

// agrees reports whether a verdict is one of those.
func agrees(v working.Verdict) bool {
	return v == working.Agree || v == working.AgreeConservative
}

// unlessMissing makes a claim that agrees one that is not stated, if something
// that it rests on was not stated but taken at its kindest.
func (l CheckedClaim) unlessMissing(missing []string) CheckedClaim {
	if len(missing) > 0 && agrees(l.Verdict) {
		l.Verdict, l.Rule = working.NotStated, "needs "+strings.Join(missing, ", ")
	}
	return l
}

// numeric judges a claim that is a number beside the number worked out, nil if
// that could not be.
func numeric(kind ClaimKind, stated units.Printed, computed units.Value, side working.Side, src working.Source) CheckedClaim {
	// Check has read the claim in a unit of its kind, and its result is finite.
	j, err := working.Claim{Stated: stated, Computed: computed, SafeSide: side}.Judge()
	if err != nil {
		j = working.Judgement{Rule: err.Error()}
	}
	return CheckedClaim{Kind: kind, Verdict: j.Verdict, Stated: asStated(stated), Computed: j.Computed, Difference: j.Difference, Rule: j.Rule, Source: src}
}

// currentLine holds the current as stated against the load as worked out. If
// nobody worked it out, it is an input and no claim.
func (c Checked) currentLine() (CheckedClaim, bool) {
	load, ok := c.Quote.Load.Get()
	if !ok || !c.Quote.Current.IsSet() {
		return CheckedClaim{}, false
	}
	return numeric(ClaimCurrent, c.Quote.Current, load, working.Higher, ohmsLaw), true
}

func (c Checked) dropLine() (CheckedClaim, bool) {
	return c.dropClaim(ClaimDrop, c.Quote.Drop, c.Voltage > 0, c.Voltage)
}

func (c Checked) percentLine() (CheckedClaim, bool) {
	return c.dropClaim(ClaimPercent, c.Quote.Percent, c.fraction() > 0, c.fraction())
}

// dropClaim holds a drop as stated against the one worked out.
func (c Checked) dropClaim(kind ClaimKind, stated units.Printed, known bool, computed units.Value) (CheckedClaim, bool) {
	if !stated.IsSet() {
		return CheckedClaim{}, false
	}
	if !known {
		return CheckedClaim{Kind: kind, Stated: asStated(stated), Rule: needs(c.missingForDrop(kind)), Source: ohmsLaw}, true
	}
	l := numeric(kind, stated, computed, working.Higher, ohmsLaw)
	return l.unlessMissing(c.missingMetal()), true
}

func (c Checked) ampacityLine() (CheckedClaim, bool) {
	stated := c.Quote.Ampacity
	switch {
	case !stated.IsSet():
		return CheckedClaim{}, false
	case !c.isJudged():
		return CheckedClaim{Kind: ClaimAmpacity, Stated: asStated(stated), Rule: needs(c.missingForHeat())}, true
	}
	of := c.Protection.Capacity
	l := numeric(ClaimAmpacity, stated, of.Current, working.Lower, of.Rule())
	// A table has no 5 %: above it only the digits of the claim are allowed for.
	if x, _, err := units.Measure(of.Current, stated.Unit()); err == nil && l.Verdict == working.Agree &&
		units.Exceeds(units.Minus(stated.Float(), x), stated.Resolution().Float()/2) {
		l.Verdict, l.Rule = working.Disagree, "above the ampacity, as stated to "+stated.Resolution().String()
	}
	return l.unlessMissing(c.missingForHeat()), true
}

// sizeLine holds the size against the smallest that passes.
func (c Checked) sizeLine() (CheckedClaim, bool) {
	l := CheckedClaim{Kind: ClaimSize}
	if c.Quote.Size.IsValid() {
		l.Stated = c.Quote.Size.String()
	}
	if c.Needed.IsValid() {
		l.Computed = c.Needed.String()
	}
	if !c.isJudged() || c.Circuit.Load == 0 {
		missing := c.missingForHeat()
		if c.Circuit.Load == 0 {
			missing = append(missing, "current")
		}
		l.Rule = needs(missing)
		return l, true
	}
	l.Source, l.Rule = c.Protection.Capacity.Rule(), "smallest size for heat"
	if c.Quote.Allowed.IsSet() {
		l.Rule = "smallest size for heat and drop"
	}
	switch size := c.Quote.Size; {
	case !c.Needed.IsValid() || size.Compare(c.Needed) < 0:
		l.Verdict = working.Disagree
	case size == c.Needed:
		l.Verdict = working.Agree
	default:
		l.Verdict = working.AgreeConservative
	}
	missing := c.missingForHeat()
	if c.Quote.Allowed.IsSet() {
		missing = append(missing, c.missingForAllowed()...)
	}
	return l.unlessMissing(missing), true
}

// needs says what is missing.
func needs(missing []string) string { return "needs " + strings.Join(missing, ", ") }

// asStated returns a claim as printed, empty if it is not stated.
func asStated(p units.Printed) string {
	if !p.IsSet() {
		return ""
	}
	return p.String()
}
