package weave

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.com/drawbar/units"
)

// An Input is what a reader may change. It is read by the getter that suits
// it: [In], [Temperature], [Count], [Text] or [Parsed].
type Input struct {
	Name    string // as set from outside: lower case letters, digits, "_"
	Label   string // plain text, such as "current of the load"
	Default string // as a person writes it, such as "20 A", "12 AWG"
	Unit    string // shown in, such as "A"; empty for a count, a choice or a text

	// Low and High are the ends, both included, of the range in which the
	// example makes sense. They are needed for a quantity, a temperature
	// and a count, and empty for a choice or a text.
	Low, High string

	// Choices are all the texts allowed; empty if it is not a choice.
	Choices []string
}

// Inputs are the inputs of one example while it is solved. A getter that
// fails returns the zero value and keeps the error, which then fails the
// example; a solve function need not check.
type Inputs struct {
	inputs []Input
	set    map[string]string   // instead of the default
	read   map[string]*reading // what the getters made of them
	errs   []error
}

// A reading is one input as a getter read it.
type reading struct {
	text    string   // for print
	allowed string   // what it may be; empty for any text
	usual   string   // the default for print; empty if the value is the same
	others  []string // to try instead of the default
}

// newInputs returns the inputs of one run of an example, or an
// [*UnknownError] for a setting of an input that it does not have.
func newInputs(inputs []Input, set []Setting) (*Inputs, error) {
	in := &Inputs{inputs: inputs, set: map[string]string{}, read: map[string]*reading{}}
	for _, s := range set {
		p := in.find(s.Input)
		if p == nil {
			return nil, &UnknownError{Kind: "input", Name: s.Input, Known: in.names()}
		}
		in.set[s.Input] = s.Value
	}
	return in, nil
}

func (in *Inputs) find(name string) *Input {
	i := slices.IndexFunc(in.inputs, func(p Input) bool { return p.Name == name })
	if i < 0 {
		return nil
	}
	return &in.inputs[i]
}

func (in *Inputs) names() []string {
	var names []string
	for _, p := range in.inputs {
		names = append(names, p.Name)
	}
	return names
}

// fail keeps err.
func (in *Inputs) fail(err error) { in.errs = append(in.errs, err) }

// lookUp returns the input named name, and the reading of it, which has the
// text given for it. An unknown name is kept as an error.
func (in *Inputs) lookUp(name string) (p *Input, r *reading) {
	p = in.find(name)
	if p == nil {
		in.fail(fmt.Errorf("the solve function reads input %q, which is not declared", name))
		return nil, nil
	}
	text, ok := in.set[name]
	if !ok {
		text = p.Default
	}
	r = &reading{text: text}
	in.read[name] = r // even if it is refused
	return p, r
}

// changed reports whether some input is another than by default. One that is
// set and not read yet may be.
func (in *Inputs) changed() bool {
	for name := range in.set {
		if r := in.read[name]; r == nil || r.usual != "" {
			return true
		}
	}
	return false
}

// refuse keeps an [*InputError].
func (in *Inputs) refuse(p *Input, r *reading, err error) {
	in.fail(&InputError{Input: p.Name, Value: r.text, Allowed: r.allowed, Err: err})
}

// badDefault keeps the error of a default behind a value that is right.
func (in *Inputs) badDefault(p *Input, err error) {
	in.fail(fmt.Errorf("default of input %q, %s: %w", p.Name, p.Default, err))
}

// mismatch keeps the error of a declaration that does not suit the getter.
func (in *Inputs) mismatch(p *Input, getter, want string) {
	in.fail(fmt.Errorf("input %q is read by %s and so needs %s", p.Name, getter, want))
}

// unread returns the inputs that no getter asked for.
func (in *Inputs) unread() []string {
	var names []string
	for _, p := range in.inputs {
		if in.read[p.Name] == nil {
			names = append(names, p.Name)
		}
	}
	return names
}

// In returns the quantity named name.
func In[Q units.Quantity](in *Inputs, name string) Q {
	return numeric(in, name, "In", units.Parse[Q], func(low, high, x Q) error {
		return units.Between(low, high).Check("weave.In", name, x)
	})
}

// Temperature returns the temperature named name.
func Temperature(in *Inputs, name string) units.Temperature {
	return numeric(in, name, "Temperature", units.ParseTemperature, func(low, high, t units.Temperature) error {
		return units.TemperatureBounds{Low: low, High: high}.Check("weave.Temperature", name, t)
	})
}

// asValue returns x, which is a quantity or a temperature, both of which are
// values; the constraint [units.Quantity] does not tell the compiler so.
func asValue(x any) units.Value {
	v, _ := x.(units.Value)
	return v
}

// numeric returns the input named name, which is read by parse and held
// against its range by check.
func numeric[V any](in *Inputs, name, getter string, parse func(string) (V, error), check func(low, high, x V) error) (zero V) {
	p, r := in.lookUp(name)
	if p == nil {
		return zero
	}
	if p.Unit == "" || p.Low == "" || p.High == "" || len(p.Choices) > 0 {
		in.mismatch(p, getter, "Unit, Low and High, and no Choices")
		return zero
	}
	low, errLow := parse(p.Low)
	high, errHigh := parse(p.High)
	for _, err := range []error{errLow, errHigh} {
		if err != nil {
			in.fail(fmt.Errorf("range of input %q: %w", p.Name, err))
			return zero
		}
	}
	var errUnit error
	if r.allowed, errUnit = rangeText(p, low, high); errUnit != nil {
		in.fail(fmt.Errorf("input %q: %w", p.Name, errUnit))
		return zero
	}
	read := func(text string) (V, error) {
		x, err := parse(text)
		if err != nil {
			return zero, err
		}
		return x, check(low, high, x)
	}
	x, err := read(r.text)
	if err != nil {
		in.refuse(p, r, err)
		return zero
	}
	usual, err := read(p.Default)
	if err != nil {
		in.badDefault(p, err)
		return zero
	}
	// The unit is one of this kind and both are within the range.
	r.text, _ = measured(asValue(x), p.Unit, maxDigits)
	if check(usual, usual, x) != nil {
		r.usual, _ = measured(asValue(usual), p.Unit, maxDigits)
	}
	r.others = []string{above(p, usual, high), p.High, p.Low}
	return x
}

// rangeText returns "1 A to 100 A".
func rangeText(p *Input, low, high any) (string, error) {
	from, err := measured(asValue(low), p.Unit, maxDigits)
	if err != nil {
		return "", err
	}
	to, err := measured(asValue(high), p.Unit, maxDigits)
	return from + " to " + to, err
}

// above returns a round value in the unit of p, which both have, that is not
// far above usual: half as much again, or halfway to high if that is nearer.
func above(p *Input, usual, high any) string {
	const digits, again = 2, 1.5
	x, _, _ := measure(asValue(usual), p.Unit)
	end, _, _ := measure(asValue(high), p.Unit)
	other := (x + end) / 2
	if x > 0 {
		other = min(other, again*x)
	}
	return withUnit(units.Significant(other, digits), p.Unit)
}

// Count returns the whole number named name.
func Count(in *Inputs, name string) int {
	p, r := in.lookUp(name)
	if p == nil {
		return 0
	}
	low, errLow := strconv.Atoi(p.Low)
	high, errHigh := strconv.Atoi(p.High)
	if errLow != nil || errHigh != nil || p.Unit != "" || len(p.Choices) > 0 {
		in.mismatch(p, "Count", "Low and High as whole numbers, and no Unit or Choices")
		return 0
	}
	r.allowed = p.Low + " to " + p.High
	n, err := readCount(r.text, low, high)
	if err != nil {
		in.refuse(p, r, err)
		return 0
	}
	usual, err := readCount(p.Default, low, high)
	if err != nil {
		in.badDefault(p, err)
		return 0
	}
	r.text = strconv.Itoa(n)
	if n != usual {
		r.usual = strconv.Itoa(usual)
	}
	r.others = []string{strconv.Itoa(usual + 1), p.High, p.Low}
	return n
}

// readCount reads a whole number from low to high.
func readCount(text string, low, high int) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	switch {
	case errors.Is(err, strconv.ErrSyntax):
		return 0, &units.ParseError{Input: text, Want: "count", Reason: "not a whole number"}
	case err != nil || n < low || n > high:
		return 0, units.ErrRange
	}
	return n, nil
}

// Text returns the choice named name, in the spelling of its list however
// spaces and letter case were typed, or a text as it was given.
func Text(in *Inputs, name string) string {
	return Parsed(in, name, func(s string) (string, error) { return s, nil })
}

// Parsed returns the choice or text named name as read by parse, such as
// wire.ParseSize.
func Parsed[T any](in *Inputs, name string, parse func(string) (T, error)) (zero T) {
	p, r := in.lookUp(name)
	if p == nil {
		return zero
	}
	if p.Unit != "" || p.Low != "" || p.High != "" {
		in.mismatch(p, "Text or Parsed", "no Unit, Low and High")
		return zero
	}
	r.allowed = strings.Join(p.Choices, ", ")
	text, ok := p.choice(r.text)
	switch {
	case !ok:
		in.refuse(p, r, units.ErrRange)
		return zero
	case text == "":
		in.refuse(p, r, &units.ParseError{Input: r.text, Want: p.Label, Reason: "empty"})
		return zero
	}
	v, err := parse(text)
	if err != nil {
		in.refuse(p, r, err)
		return zero
	}
	usual, _ := p.choice(p.Default)
	u, err := parse(usual)
	if err != nil {
		in.badDefault(p, err)
		return zero
	}
	r.text = text
	if !reflect.DeepEqual(v, u) {
		r.usual = usual
	}
	if i := slices.Index(p.Choices, usual); i >= 0 {
		r.others = slices.Concat(p.Choices[i+1:], p.Choices[:i])
	}
	return v
}

// choice returns text in the spelling of the choices, or with no space around
// it if there are none. It is not ok if it is no choice.
func (p *Input) choice(text string) (spelling string, ok bool) {
	if len(p.Choices) == 0 {
		return strings.TrimSpace(text), true
	}
	i := slices.IndexFunc(p.Choices, func(c string) bool { return sameText(c, text) })
	if i < 0 {
		return "", false
	}
	return strings.TrimSpace(p.Choices[i]), true
}

// sameText reports whether a and b are the same but for spaces and case.
func sameText(a, b string) bool {
	squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
	return strings.EqualFold(squeeze(a), squeeze(b))
}
