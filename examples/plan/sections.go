package plan

import (
	"slices"
	"strconv"
	"strings"

	"example.com/drawbar/units/working"
)

func (p Plan) ledgerSections() []section {
	loads := section{title: "Loads", head: []string{"load", "bus", "W when on", "Wh a day", "must not stop"}}
	for _, l := range p.Loads {
		mark := ""
		if l.MustNotStop {
			mark = "yes"
		}
		loads.rows = append(loads.rows, row{[]string{l.Name},
			[]string{l.Name, l.Bus, number(l.Power, "W", 4), number(l.Energy, "Wh", 4), mark}})
	}
	buses := section{title: "Buses", head: []string{"bus", "volts", "Wh a day", "Ah a day", "W mean", "W at once", "VA at once", "A at once"}}
	for _, b := range p.Buses {
		charge, apparent := "-", "-"
		if b.Charge > 0 {
			charge = number(b.Charge, "Ah", 3)
		}
		if b.Apparent > 0 {
			apparent = number(b.Apparent, "VA", 4)
		}
		buses.rows = append(buses.rows, row{[]string{"bus " + b.Name}, []string{b.Name, number(b.Voltage, "V", 3), number(b.Energy, "Wh", 4),
			charge, number(b.Average, "W", 3), number(b.Peak, "W", 4), apparent, number(b.Current, "A", 3)}})
	}
	buses.text = []string{"At once is all loads together. Ampere-hours are those at the voltage of the bus. What a load behind the inverter takes from the bank is in the next table."}
	return []section{loads, buses}
}

func (p Plan) bankSection() section {
	u, b := p.Use, p.Bank
	s := section{parts: []string{"bank"}, title: "Bank: " + b.Name}
	add := func(part, name, text string) { s.rows = append(s.rows, row{[]string{part}, []string{name, text}}) }
	add("use", "direct-current loads", in(u.Direct, "Wh", 4)+" a day")
	if p.Inverter != nil {
		add("use", "through the inverter", in(u.Inverted, "Wh", 4)+" a day, "+p.itself())
	}
	add("use", "together", p.least()+in(u.Energy, "Wh", 4)+" a day, "+in(u.Charge, "Ah", 3)+p.looped())
	add("bank", "usable", in(b.Usable, "Wh", 4)+", "+in(b.Charge, "Ah", 3))
	add("bank", "to empty, average use", p.most(b.AtAverage)+lasts(b.AtAverage, "it", "")+untilMended(b.AverageWithLoop))
	if b.AtMustNotStop.IsSet() {
		add("bank", "to empty, must not stop", p.most(b.AtMustNotStop)+lasts(b.AtMustNotStop, "it", "")+untilMended(b.WithLoop))
	}
	return s
}

// itself says what the inverter draws for itself in a day.
func (p Plan) itself() string {
	if !p.Use.IdleStated {
		return "what the inverter draws for itself is not stated and not in it"
	}
	return "of which " + in(p.Use.Idle, "Wh", 3) + " for the inverter itself"
}

func (p Plan) roofSection() section {
	s := section{title: "Roof"}
	sun := p.Sun
	if sun == nil {
		return s
	}
	add := func(name, text string) { s.rows = append(s.rows, row{[]string{"roof"}, []string{name, text}}) }
	of := " strings of "
	if sun.Strings == 1 {
		of = " string of "
	}
	add("panels", in(sun.Peak, "W", 4)+" nameplate, "+strconv.Itoa(sun.Strings)+of+strconv.Itoa(sun.Series))
	add("harvest", in(sun.Harvest, "Wh", 4)+" on the day")
	add("open circuit, coldest", in(sun.ColdOpen, "V", 4)+" at "+sun.Coldest.String()+", against "+in(sun.Controller.InputLimit, "V", 3)+" of the controller")
	add("open circuit, 25 °C", in(sun.Standard, "V", 4))
	add("short circuit", in(sun.Short, "A", 3)+"; conductors from the roof must carry "+in(sun.Required, "A", 3))
	add("into the bank", in(sun.Controller.Offered, "A", 3)+" offered in full sun, against "+in(sun.Controller.OutputLimit, "A", 3)+
		" of the "+sun.Controller.Kind.String()+" controller")
	return s
}

func (p Plan) sourceSection() section {
	s := section{parts: []string{"inverter", "converter"}, title: "Sources and what each can carry", head: []string{"source", "W", "W for hours", "VA surge", "also"}}
	shore := slices.ContainsFunc(p.Sources, func(l SourceLine) bool { return l.Name == "shore" })
	for _, l := range p.Sources {
		surge := "-"
		if x, ok := l.Surge.Get(); ok {
			surge = number(x, "VA", 4)
		}
		parts := []string{l.Name}
		if l.Name == "bank and inverter" {
			parts = []string{"inverter"}
		}
		s.rows = append(s.rows, row{parts, []string{l.Name, number(l.Power, "W", 4), number(l.Continuous, "W", 4), surge, l.also(shore)}})
	}
	if i := p.Inverter; i != nil {
		s.text = []string{"The inverter takes " + in(i.Current, "A", 3) + " at its lowest voltage; conductor and device must be rated for " + in(i.Required, "A", 3) + "."}
		if i.Largest != "" {
			s.text = append(s.text, "With \""+i.Largest+"\" on top of what must not stop, "+in(i.PowerLeft, "W", 3)+" and "+in(i.ApparentLeft, "VA", 3)+" are left of it."+p.loopDraws())
		}
	}
	return s
}

// loopDraws says what the converter takes of the inverter that feeds it.
func (p Plan) loopDraws() string {
	if p.Use.Loop == 0 {
		return ""
	}
	return " Not counted there is the converter, which takes " + in(p.drawn.power, "W", 3) + " and " + in(p.drawn.apparent, "VA", 3) +
		" of it whenever it charges, until the loop is mended."
}

// also says what else to know of a source.
func (l SourceLine) also(shore bool) string {
	text := joined(l.Numbers)
	if l.Name == "generator" {
		text = reachNote(l.Guard, shore)
	}
	return text
}

func (p Plan) circuitSection() section {
	s := section{title: "Circuits", head: []string{"", "route", "size", "A", "drop", "path", "device", "limit", "worst"},
		text: []string{"Drop and path are parts of the bus voltage, path with the feeders. The limit is the greatest device that the rule set allows. " +
			"Worst is the severity of the worst finding, - if there is none above a note."}}
	s.text = append(s.text, p.tablesUsed()...)
	for _, c := range p.Circuits {
		worst := c.Worst.String()
		if c.Worst == working.Note {
			worst = "-"
		}
		limit := "-" // not judged
		if most, ok := c.Limit.Get(); ok {
			limit = in(most, "A", 3)
		}
		s.rows = append(s.rows, row{[]string{c.Name}, []string{c.Name, c.Route, c.Size, number(c.Current, "A", 3), in(c.Fraction, "%", 2),
			in(c.Path, "%", 2), p.deviceCell(c.Device), limit, worst}})
	}
	return s
}

// deviceCell returns the device of a circuit; where the panels' rule asks for
// none, for how many strings.
func (p Plan) deviceCell(d DeviceLine) string {
	switch {
	case d.Needed || d.Stated || p.Sun == nil:
		return d.String()
	case p.Sun.Strings == 1:
		return d.String() + " for one string"
	}
	return d.String() + " for " + strconv.Itoa(p.Sun.Strings) + " strings"
}

// tablesUsed says which table each circuit was held against.
func (p Plan) tablesUsed() []string {
	var tables []string
	names := map[string][]string{}
	for _, c := range p.Circuits {
		table := c.Rules + ": " + c.Table.String()
		if c.Table == (Source{}) {
			table = c.Rules + ", which has no row for " + c.Size
		}
		if names[table] == nil {
			tables = append(tables, table)
		}
		names[table] = append(names[table], c.Name)
	}
	for i, table := range tables {
		tables[i] = strings.Join(names[table], ", ") + " by " + table + "."
	}
	return tables
}

// String returns "30 A at dc panel", "none stated" or that none is needed.
func (d DeviceLine) String() string {
	rating, ok := d.Rating.Get()
	switch {
	case ok:
		return in(rating, "A", 4) + " at " + d.At
	case !d.Needed:
		return "none needed"
	}
	return "none stated"
}
