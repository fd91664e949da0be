package weave

import (
	"fmt"
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
	inputs  []Input
	set     map[string]string // instead of the default
	given   map[string]string // as read, for print; its keys are the inputs read
	allowed map[string]string // what each may be
	errs    []error
}

// newInputs returns the inputs of one run of an example, or an
// [*UnknownError] for a setting of an input that it does not have.
func newInputs(inputs []Input, set []Setting) (*Inputs, error) {
	in := &Inputs{inputs: inputs,
		set: map[string]string{}, given: map[string]string{}, allowed: map[string]string{}}
	for _, s := range set {
		p := in.find(s.Input)
		if p == nil {
			return nil, &UnknownError{Kind: "input", Name: s.Input, Known: in.names()}
		}
		in.set[s.Input] = s.Value
		if s.Value == p.Default {
			delete(in.set, s.Input)
		}
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

// lookUp returns the input named name and the text given for it. An unknown
// name is kept as an error.
func (in *Inputs) lookUp(name string) (p *Input, text string) {
	p = in.find(name)
	if p == nil {
		in.fail(fmt.Errorf("the solve function reads input %q, which is not declared", name))
		return nil, ""
	}
	text, ok := in.set[name]
	if !ok {
		text = p.Default
	}
	in.given[name] = text // read, even if refused
	return p, text
}

// refuse keeps an [*InputError].
func (in *Inputs) refuse(p *Input, text string, err error) {
	in.fail(&InputError{Input: p.Name, Value: text, Allowed: in.allowed[p.Name], Err: err})
}

// mismatch keeps the error of a declaration that does not suit the getter.
func (in *Inputs) mismatch(p *Input, getter, want string) {
	in.fail(fmt.Errorf("input %q is read by %s and so needs %s", p.Name, getter, want))
}

// unread returns the inputs that no getter asked for.
func (in *Inputs) unread() []string {
	var names []string
	for _, p := range in.inputs {
		if _, ok := in.given[p.Name]; !ok {
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
	p, text := in.lookUp(name)
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
	allowed, errUnit := rangeText(p, low, high)
	if errUnit != nil {
		in.fail(fmt.Errorf("input %q: %w", p.Name, errUnit))
		return zero
	}
	in.allowed[name] = allowed
	x, err := parse(text)
	if err == nil {
		err = check(low, high, x)
	}
	if err != nil {
		in.refuse(p, text, err)
		return zero
	}
	// The unit is one of this kind and x within the range: both were checked.
	in.given[name], _ = measured(asValue(x), p.Unit, maxDigits)
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

// Count returns the whole number named name.
func Count(in *Inputs, name string) int {
	p, text := in.lookUp(name)
	if p == nil {
		return 0
	}
	low, errLow := strconv.Atoi(p.Low)
	high, errHigh := strconv.Atoi(p.High)
	if errLow != nil || errHigh != nil || p.Unit != "" || len(p.Choices) > 0 {
		in.mismatch(p, "Count", "Low and High as whole numbers, and no Unit or Choices")
		return 0
	}
	in.allowed[name] = p.Low + " to " + p.High
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err == nil && (n < low || n > high) {
		err = units.ErrRange
	}
	if err != nil {
		in.refuse(p, text, err)
		return 0
	}
	in.given[name] = strconv.Itoa(n)
	return n
}

// Text returns the choice named name, in the spelling of its list however
// spaces and letter case were typed, or a text as it was given.
func Text(in *Inputs, name string) string {
	return Parsed(in, name, func(s string) (string, error) { return s, nil })
}

// Parsed returns the choice or text named name as read by parse, such as
// wire.ParseSize.
func Parsed[T any](in *Inputs, name string, parse func(string) (T, error)) (zero T) {
	p, text := in.lookUp(name)
	if p == nil {
		return zero
	}
	if p.Unit != "" || p.Low != "" || p.High != "" {
		in.mismatch(p, "Text or Parsed", "no Unit, Low and High")
		return zero
	}
	if len(p.Choices) > 0 {
		in.allowed[name] = strings.Join(p.Choices, ", ")
		i := slices.IndexFunc(p.Choices, func(c string) bool { return sameText(c, text) })
		if i < 0 {
			in.refuse(p, text, units.ErrRange)
			return zero
		}
		text = p.Choices[i]
	}
	trimmed := strings.TrimSpace(text)
	if trimmed == "" {
		in.refuse(p, text, &units.ParseError{Input: text, Want: p.Label, Reason: "empty"})
		return zero
	}
	v, err := parse(trimmed)
	if err != nil {
		in.refuse(p, text, err)
		return zero
	}
	in.given[name] = trimmed
	return v
}

// sameText reports whether a and b are the same but for spaces and case.
func sameText(a, b string) bool {
	squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
	return strings.EqualFold(squeeze(a), squeeze(b))
}
