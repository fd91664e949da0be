package plan

import (
	"strconv"
	"strings"

	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A document is a plan in the order in which its owner reads it, before it is
// text or Markdown.
type document struct {
	title    string
	lead     string
	sections []section
}

// A section has any of its parts, which come in this order.
type section struct {
	title string
	text  []string   // paragraphs
	head  []string   // of a table
	rows  [][]string // of a table
	items []item     // a list
}

// An item is a finding or a caution.
type item struct {
	mark string // "DANGER" and the like, may be empty
	text string
	more []string // lines below it
}

// document lays p out.
func (p Plan) document() document {
	d := document{title: "Power plan: " + p.Rig, lead: p.Day}
	d.sections = append(d.sections, p.short(), p.attention())
	d.sections = append(d.sections, p.ledgerSections()...)
	d.sections = append(d.sections, p.bankSection(), p.sourceSection())
	if len(p.Sets) > 0 {
		d.sections = append(d.sections, p.setSection())
	}
	if len(p.Circuits) > 0 {
		d.sections = append(d.sections, p.circuitSection())
	}
	return d.with(p.noteSection(), p.cautionSection())
}

// with appends the sections that have items.
func (d document) with(s ...section) document {
	for _, one := range s {
		if len(one.items) > 0 {
			d.sections = append(d.sections, one)
		}
	}
	return d
}

// short is the plan in a few lines.
func (p Plan) short() section {
	u, b := p.Use, p.Bank
	rows := [][]string{
		{"Use", in(u.Energy, "Wh", 4) + " a day from the bank, " + in(u.Charge, "Ah", 3) + ", " + in(u.Average, "W", 3) + " on average"},
		{"Bank", in(b.Usable, "Wh", 4) + " usable: " + hours(b.AtAverage) + " on average use, without sun"},
	}
	if u.MustNotStop > 0 {
		rows = append(rows, []string{"Must not stop", in(u.MustNotStop, "W", 3) + " on average: " + p.critical()})
	}
	if u.Unattended > u.MustNotStop {
		rows = append(rows, []string{"Nobody there", in(u.Unattended, "W", 3) + " on average: " + hours(b.AtUnattended) + " without sun"})
	}
	if p.Sun != nil {
		rows = append(rows, []string{"Sun", in(p.Sun.Harvest, "Wh", 4) + " on the day, " + in(p.Sun.Part, "%", 2) + " of the use"})
	}
	if u.GapHours > 0 {
		rows = append(rows, []string{"To close the gap", hours(u.GapHours) + " a day of the converter, on shore power or generator"})
	}
	return section{title: "In short", rows: rows}
}

// critical says how long what must not stop runs.
func (p Plan) critical() string {
	b := p.Bank
	text := hours(b.AtMustNotStop) + " without sun"
	if p.Sun != nil {
		text += ", " + "without end with this sun"
		if b.MustNotStopDays != nil {
			text = hours(b.AtMustNotStop) + " without sun, " + in(*b.MustNotStopDays, "d", 2) + " with this sun"
		}
	}
	if b.WithLoop != nil {
		text += "; only " + hours(*b.WithLoop) + " until the loop below is mended"
	}
	return text
}

// attention lists dangers and cautions.
func (p Plan) attention() section {
	s := section{title: "What needs attention, worst first"}
	for _, f := range p.Findings {
		if f.Severity > working.Note {
			s.items = append(s.items, f.item())
		}
	}
	if len(s.items) == 0 {
		s.text = []string{"Nothing was found by the checks of this plan. What they did not look at is below, under notes."}
	}
	return s
}

// item lays f out.
func (f Finding) item() item {
	i := item{mark: strings.ToUpper(f.Severity.String()) + " " + f.Where, text: f.Message}
	if len(f.Numbers) > 0 {
		i.more = append(i.more, "Numbers: "+strings.Join(f.Numbers, ", ")+".")
	}
	i.more = append(i.more, "Mend: "+f.Fix, "Rule: "+f.Rule+"; "+f.Source+".")
	return i
}

func (p Plan) ledgerSections() []section {
	loads := section{title: "Loads", head: []string{"load", "bus", "W when on", "Wh a day", "must not stop"}}
	for _, l := range p.Loads {
		mark := ""
		if l.MustNotStop {
			mark = "yes"
		}
		loads.rows = append(loads.rows, []string{l.Name, l.Bus, number(l.Power, "W", 4), number(l.Energy, "Wh", 4), mark})
	}
	buses := section{title: "Buses", head: []string{"bus", "volts", "Wh a day", "Ah a day", "W mean", "W at once", "VA at once", "A at once"}}
	for _, b := range p.Buses {
		ah := "-"
		if b.Charge > 0 {
			ah = number(b.Charge, "Ah", 3)
		}
		buses.rows = append(buses.rows, []string{b.Name, number(b.Voltage, "V", 3), number(b.Energy, "Wh", 4), ah, number(b.Average, "W", 3),
			number(b.Peak, "W", 4), number(b.Apparent, "VA", 4), number(b.Current, "A", 3)})
	}
	buses.text = []string{"Ampere-hours are those at the voltage of the bus. What a load behind the inverter takes from the bank is in the next table."}
	return []section{loads, buses}
}

func (p Plan) bankSection() section {
	u, b := p.Use, p.Bank
	s := section{title: "Bank: " + b.Name, rows: [][]string{
		{"direct-current loads", in(u.Direct, "Wh", 4) + " a day"},
		{"through the inverter", in(u.Inverted, "Wh", 4) + " a day, of which " + in(u.Idle, "Wh", 3) + " for the inverter itself"},
		{"together", in(u.Energy, "Wh", 4) + " a day, " + in(u.Charge, "Ah", 3)},
		{"usable", in(b.Usable, "Wh", 4) + ", " + in(b.Charge, "Ah", 3)},
		{"to empty, average use", hours(b.AtAverage)},
		{"to empty, must not stop", hours(b.AtMustNotStop)},
	}}
	if p.Sun != nil {
		s.rows = append(s.rows, []string{"coldest string voltage", in(p.Sun.ColdOpen, "V", 4) + " against " + in(p.Sun.Limit, "V", 3) + " of the controller"})
	}
	return s
}

func (p Plan) sourceSection() section {
	s := section{title: "Sources and what each can carry", head: []string{"source", "W", "W for hours", "VA surge", "note"}}
	for _, l := range p.Sources {
		surge := "-"
		if l.Surge > 0 {
			surge = number(l.Surge, "VA", 4)
		}
		s.rows = append(s.rows, []string{l.Name, number(l.Power, "W", 4), number(l.Continuous, "W", 4), surge, l.Note})
	}
	if i := p.Inverter; i != nil {
		s.text = []string{"The inverter takes " + in(i.Current, "A", 3) + " at its lowest voltage; conductor and device must be rated for " + in(i.Required, "A", 3) + "."}
		if i.Largest != "" {
			s.text = append(s.text, "With \""+i.Largest+"\" on top of what must not stop, "+in(i.PowerLeft, "W", 3)+" and "+in(i.ApparentLeft, "VA", 3)+" are left of it.")
		}
	}
	return s
}

func (p Plan) setSection() section {
	s := section{title: "Not together", text: []string{"The smallest sets that are too much; any set with all of one of these in it is too much as well."},
		head: []string{"on", "loads", "together"}}
	for _, set := range p.Sets {
		s.rows = append(s.rows, []string{set.On, strings.Join(set.Loads, " + "), set.Note})
	}
	return s
}

func (p Plan) circuitSection() section {
	s := section{title: "Circuits", head: []string{"", "route", "size", "A", "drop", "path", "device", "limit", "worst"},
		text: []string{"Drop and path are parts of the bus voltage, path with the feeders. The limit is the greatest device that the rule set allows."}}
	for _, c := range p.Circuits {
		worst := c.Worst.String()
		if c.Worst == working.Note {
			worst = "-"
		}
		limit := "-" // not judged
		if c.Limit > 0 {
			limit = in(c.Limit, "A", 3)
		}
		s.rows = append(s.rows, []string{c.Name, c.Route, c.Size, number(c.Current, "A", 3), in(c.Fraction, "%", 2), in(c.Path, "%", 2), c.Device,
			limit, worst})
	}
	return s
}

func (p Plan) noteSection() section {
	s := section{title: "Notes"}
	for _, f := range p.Findings {
		if f.Severity == working.Note {
			text := f.Where + ": " + f.Message
			if len(f.Numbers) > 0 {
				text += " Numbers: " + strings.Join(f.Numbers, ", ") + "."
			}
			s.items = append(s.items, item{text: text + " " + f.Fix})
		}
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

// in returns v in a unit that suits the place, which is one that v has.
func in(v units.Value, unit string, digits int) string {
	return number(v, unit, digits) + " " + unit
}

// number is in without the unit.
func number(v units.Value, unit string, digits int) string {
	x, _, err := units.Measure(v, unit)
	if err != nil {
		return v.String()
	}
	return units.Significant(x, digits)
}

// hours returns a time as an owner counts it.
func hours(t units.Elapsed) string {
	if h := units.In(t, units.Hour); h < 100 {
		return units.Significant(h, 3) + " h"
	}
	return strconv.Itoa(int(units.In(t, units.Day))) + " days"
}
