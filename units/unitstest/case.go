package unitstest

import (
	"fmt"

	"example.com/drawbar/units"
)

// A Case is one row of a published file while a call works it out: the call
// reads each given and answers each expectation.
type Case struct {
	row           row
	read          map[string]bool // givens
	answered      map[string]bool // expectations
	problems      []string        // with the row or the call
	disagreements []string        // with print
	needed        bool            // an expectation does not hold to its digits
	errors        []string        // of kind measured
}

// stopped is what ends a call before its end.
type stopped struct{}

// run has the call work c out, unless the row is wrong already.
func (c *Case) run(call func(*Case)) {
	if len(c.problems) > 0 {
		return
	}
	if call == nil {
		c.problem("no call %q", c.row.call)
		return
	}
	c.read, c.answered = map[string]bool{}, map[string]bool{}
	if !c.complete(call) {
		return // what is left unread or open says nothing then
	}
	for _, p := range c.row.given {
		if !c.read[p.name] {
			c.problem("given %s is not read", p.name)
		}
	}
	for _, p := range c.row.expect {
		if !c.answered[p.name] {
			c.problem("%s is not answered", p.name)
		}
	}
}

// complete reports whether the call came to its end.
func (c *Case) complete(call func(*Case)) (ok bool) {
	defer func() {
		if !ok {
			if e := recover(); e != nil && e != (stopped{}) {
				panic(fmt.Sprintf("%s: %v", c.row.id, e))
			}
		}
	}()
	call(c)
	return true
}

// failures returns what c fails for. An excused case may disagree with print,
// and has to.
func (c *Case) failures(reason string, excused bool) []string {
	switch {
	case !excused:
		return append(c.problems, c.disagreements...)
	case reason == "":
		return append(c.problems, "excused without a reason")
	case len(c.disagreements) == 0 && len(c.problems) == 0:
		return []string{"no longer needs its excuse: " + reason}
	}
	return c.problems
}

func (c *Case) problem(format string, args ...any) {
	c.problems = append(c.problems, fmt.Sprintf(format, args...))
}

// ID returns the id of the row.
func (c *Case) ID() string { return c.row.id }

// Has reports whether name is given. It does not read it.
func (c *Case) Has(name string) bool {
	_, ok := find(c.row.given, name)
	return ok
}

// Fatalf fails the row and ends its call. The message is formatted as by
// [fmt.Sprintf].
func (c *Case) Fatalf(format string, args ...any) {
	c.problem(format, args...)
	panic(stopped{})
}

// Text reads the given name as it stands. If it is not given, the row fails.
func (c *Case) Text(name string) string {
	text, ok := find(c.row.given, name)
	if !ok {
		c.Fatalf("the call reads %s, which is not given", name)
	}
	c.read[name] = true
	return text
}

// In reads the given name as [units.Parse] does. If it is not given or not
// such a quantity, the row fails.
func In[Q units.Quantity](c *Case, name string) Q {
	q, err := units.Parse[Q](c.Text(name))
	if err != nil {
		c.Fatalf("given %s: %v", name, err)
	}
	return q
}

// Temperature reads the given name as [units.ParseTemperature] does. If it is
// not given or not a temperature, the row fails.
func (c *Case) Temperature(name string) units.Temperature {
	temperature, err := units.ParseTemperature(c.Text(name))
	if err != nil {
		c.Fatalf("given %s: %v", name, err)
	}
	return temperature
}

// Got answers the expectation name with a result. If the row does not expect
// it, it fails; see [Case.MayGet].
func (c *Case) Got(name string, v units.Value) {
	printed, ok := c.answer(name)
	if !ok {
		return
	}
	d, err := compare(printed, c.row.width, v)
	switch {
	case err != nil:
		c.problem("%s: %v", name, err)
	case !d.within:
		c.disagreements = append(c.disagreements, fmt.Sprintf("%s = %s, printed %s (kind %s%s)",
			name, d.got, printed, c.row.kind, prefixed(" ", c.row.width)))
	case c.row.kind == measured:
		c.errors = append(c.errors, fmt.Sprintf("%s %s: %s, printed %s, %s of %s allowed",
			c.row.id, name, d.got, printed, d.off, c.row.width))
	}
	c.needed = c.needed || !d.digits
}

// MayGet is [Case.Got] if the row expects name, and else does nothing. It lets
// rows that print different results share a call.
func (c *Case) MayGet(name string, v units.Value) {
	if _, ok := find(c.row.expect, name); ok {
		c.Got(name, v)
	}
}

// GotText answers the expectation name with a choice, such as a size, which
// is compared as text whatever the kind of the row. If the row does not
// expect it, it fails.
func (c *Case) GotText(name, text string) {
	printed, ok := c.answer(name)
	if ok && text != printed {
		c.needed = true
		c.disagreements = append(c.disagreements, fmt.Sprintf("%s = %q, printed %q", name, text, printed))
	}
}

// answer returns what is expected for name, if it is, for the first time.
func (c *Case) answer(name string) (printed string, ok bool) {
	printed, ok = find(c.row.expect, name)
	switch {
	case !ok:
		c.problem("the call answers %s, which is not expected", name)
	case c.answered[name]:
		c.problem("%s is answered twice", name)
		ok = false
	}
	c.answered[name] = true
	return printed, ok
}

// prefixed returns prefix and s, or nothing if s is empty.
func prefixed(prefix, s string) string {
	if s == "" {
		return ""
	}
	return prefix + s
}
