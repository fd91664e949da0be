package plan

import (
	"slices"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A document is a plan in the order in which its owner reads it, before it is
// text or Markdown.
type document struct {
	title    string
	lead     []string // paragraphs
	sections []section
}

// A section has a title and any of the rest, in this order.
type section struct {
	parts []string // with the sheets of the numbers in its title and text
	title string
	text  []string // paragraphs
	head  []string // of a table
	rows  []row    // of a table
	items []item   // a list
}

// A row of a table knows which parts have the sheets of its numbers.
type row struct {
	parts []string
	cells []string
}

// An item is a finding or a caution.
type item struct {
	parts []string
	mark  string // "DANGER" and the like, may be empty
	text  string
	more  []string // lines below it
}

// document lays p out.
func (p Plan) document() document {
	d := document{title: "Power plan: " + p.Rig, lead: []string{p.Day}}
	if p.Demo {
		d.lead = append([]string{"DEMO, invented data: no real vehicle, place or product. Do not act on it."}, d.lead...)
	}
	d.sections = append(d.sections, p.short(), p.attention())
	d.sections = append(d.sections, p.ledgerSections()...)
	d.sections = append(d.sections, p.bankSection())
	return d.with(p.roofSection(), p.sourceSection(), p.setSection(), p.runSection(), p.circuitSection(), p.noteSection(), p.cautionSection())
}

// with appends the sections that have something in them.
func (d document) with(s ...section) document {
	for _, one := range s {
		if len(one.rows)+len(one.items) > 0 {
			d.sections = append(d.sections, one)
		}
	}
	return d
}

// short is the plan in a few lines.
func (p Plan) short() section {
	u, b := p.Use, p.Bank
	s := section{title: "In short"}
	add := func(name, text string, parts ...string) { s.rows = append(s.rows, row{parts, []string{name, text}}) }
	add("Use", p.least()+in(u.Energy, "Wh", 4)+" a day from the bank, "+in(u.Charge, "Ah", 3)+", "+in(u.Average, "W", 3)+" on average"+p.looped(), "use")
	add("Bank", in(b.Usable, "Wh", 4)+" usable: "+p.most(b.AtAverage)+lasts(b.AtAverage, "average use", " on average use, without sun")+untilMended(b.AverageWithLoop), "bank")
	if u.MustNotStop > 0 {
		add("Must not stop", p.least()+in(u.MustNotStop, "W", 3)+" on average: "+p.critical(), "use", "bank", "converter")
	}
	if u.Unattended > u.MustNotStop {
		add("Nobody there", p.least()+in(u.Unattended, "W", 3)+" on average: "+p.most(b.AtUnattended)+lasts(b.AtUnattended, "that", " without sun")+untilMended(b.UnattendedWithLoop), "use", "bank")
	}
	if p.Sun != nil {
		text := in(p.Sun.Harvest, "Wh", 4) + " on the day"
		if u.Energy > 0 {
			text += ", " + in(p.Sun.Share, "%", 2) + " of the use"
		}
		if p.has("more-sun-than-there-is") {
			text = "at most " + text + "; more sun is stated than there is, see below"
		}
		add("Sun", text, "roof")
	}
	if t, ok := u.GapHours.Get(); ok {
		add("To close the gap", p.closing(t), "converter")
	} else if p.has("use-above-charge") {
		add("To close the gap", "nothing that is described does on this day")
	}
	return s
}

// lasts says how long the bank lasts, with tail behind a time, or that it
// carries nothing, or not what is named.
func lasts(t units.Opt[units.Elapsed], what, tail string) string {
	switch e, ok := t.Get(); {
	case !ok:
		return "nothing draws on it"
	case e == 0:
		return "the bank cannot carry " + what
	default:
		return hours(e) + tail
	}
}

// critical says how long what must not stop runs.
func (p Plan) critical() string {
	b := p.Bank
	text := p.most(b.AtMustNotStop) + lasts(b.AtMustNotStop, "that", " without sun")
	if p.Sun != nil {
		if days, ok := b.MustNotStopDays.Get(); ok {
			text += ", " + in(days, "d", 2) + " with this sun"
		} else {
			text += ", without end with this sun"
		}
	}
	return text + untilMended(b.WithLoop)
}

// untilMended says how long the bank lasts with the loop.
func untilMended(t units.Opt[units.Elapsed]) string {
	with, ok := t.Get()
	if !ok {
		return ""
	}
	return "; only " + hours(with) + " until the loop below is mended"
}

// looped says what the loop takes on top of the use.
func (p Plan) looped() string {
	if p.Use.LoopEnergy == 0 {
		return ""
	}
	return "; " + in(p.Use.LoopEnergy, "Wh", 4) + " more until the loop below is mended"
}

// most and least mark numbers that leave out what the inverter draws by itself
// because nobody stated it.
func (p Plan) most(t units.Opt[units.Elapsed]) string {
	if p.Use.IdleStated || t.Or(0) == 0 {
		return ""
	}
	return "at most "
}

func (p Plan) least() string {
	if p.Use.IdleStated {
		return ""
	}
	return "at least "
}

// closing says whether hours of the converter close the gap that the sun
// leaves.
func (p Plan) closing(t units.Elapsed) string {
	longest := max(t, p.Use.GapByCharge.Or(0))
	tail := ""
	if p.Use.GapByCharge.IsSet() {
		tail = " (" + hours(t) + " by energy, " + hours(longest) + " by charge)"
	}
	if p.lead {
		tail += "; lead takes longer still, for it does not give back all of a charge and takes little of it near full"
	}
	need := hours(t) + " a day of the converter"
	switch from := p.feeding(); {
	case from == "" && p.weak:
		return need + " would, but the generator does not carry it and no shore power is there: nothing closes the gap"
	case from == "":
		return need + " would, but no shore power and no generator is there to feed it: nothing closes the gap"
	case units.Exceeds(longest, day):
		return "the converter cannot: it would need " + hours(longest) + " a day, on " + from + tail
	default:
		return need + ", on " + from + tail
	}
}

// has reports whether anything was found by a rule.
func (p Plan) has(rule string) bool {
	return slices.ContainsFunc(p.Findings, func(f Finding) bool { return f.Rule == rule })
}

// feeding names the sources that can feed the converter.
func (p Plan) feeding() string {
	var from []string
	for _, s := range p.Sources {
		switch s.Name {
		case "shore":
			from = append(from, "shore power")
		case "generator":
			if !p.weak {
				from = append(from, "generator")
			}
		}
	}
	return strings.Join(from, " or ")
}

// attention lists dangers and cautions.
func (p Plan) attention() section {
	s := section{title: "What needs attention, worst first"}
	told := map[string]bool{} // parts whose drop has been told
	for _, f := range p.Findings {
		switch {
		case f.Severity == working.Note:
		case !isAboutDrop(f.Rule):
			s.items = append(s.items, f.item())
		case !told[f.Part]:
			told[f.Part] = true
			s.items = append(s.items, p.dropItem(f.Part))
		}
	}
	if len(s.items) == 0 {
		s.text = []string{"Nothing was found by the checks of this plan. What they did not look at is below, under notes."}
	}
	return s
}

// mark returns "DANGER C4, dc panel - observer desk".
func (f Finding) mark() string {
	text := strings.ToUpper(f.Severity.String()) + " " + f.Part
	if f.Route != "" {
		text += ", " + f.Route
	}
	return text
}

// item lays f out.
func (f Finding) item() item {
	i := item{parts: []string{f.Part}, mark: f.mark(), text: f.Message}
	if len(f.Numbers) > 0 {
		i.more = append(i.more, "Numbers: "+joined(f.Numbers)+".")
	}
	i.more = append(i.more, "Mend: "+f.Mend, "Rule: "+f.Rule+"; "+f.Source.String()+".")
	return i
}

// joined returns "drop 13.28 %, allowed 3 %".
func joined(numbers []Number) string {
	list := make([]string, len(numbers))
	for i, n := range numbers {
		list[i] = n.String()
	}
	return strings.Join(list, ", ")
}

// noteSection gathers notes that are said of several parts alike.
func (p Plan) noteSection() section {
	s := section{title: "Notes"}
	index := map[string]int{}
	var gathered []Finding
	var parts [][]string
	for _, f := range p.Findings {
		if f.Severity != working.Note {
			continue
		}
		key := f.Rule + "\n" + f.Message
		i, ok := index[key]
		if !ok {
			index[key] = len(gathered)
			gathered, parts = append(gathered, f), append(parts, []string{f.Part})
			continue
		}
		parts[i] = append(parts[i], f.Part)
		// The numbers of the first would read as those of all.
		if joined(gathered[i].Numbers) != joined(f.Numbers) {
			gathered[i].Numbers = nil
		}
	}
	for i, f := range gathered {
		text := strings.Join(parts[i], ", ") + ": " + f.Message
		if len(f.Numbers) > 0 {
			text += " Numbers: " + joined(f.Numbers) + "."
		}
		s.items = append(s.items, item{parts: parts[i], text: text + " " + f.Mend})
	}
	return s
}

func (p Plan) cautionSection() section {
	s := section{title: "Cautions"}
	for _, c := range p.Cautions {
		s.items = append(s.items, item{text: c})
	}
	return s
}
