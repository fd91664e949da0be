package weave

import (
	"errors"
	"fmt"
	"slices"
	"strings"
)

// A solved block has been run.
type solved struct {
	inputs  *Inputs
	answer  Answer
	used    map[string]bool // values that are printed
	changed bool            // some input is not as by default
}

// solve runs a solve function on inputs with the settings.
func solve(f func(*Inputs) (Answer, error), inputs []Input, set []Setting) (*solved, error) {
	if f == nil {
		return nil, errors.New("no Solve")
	}
	if err := checkInputs(inputs); err != nil {
		return nil, err
	}
	in, err := newInputs(inputs, set)
	if err != nil {
		return nil, err
	}
	answer, err := f(in)
	// What is wrong with an input is the reason for what is wrong behind it.
	if len(in.errs) > 0 {
		return nil, errors.Join(in.errs...)
	}
	switch {
	case err != nil && in.changed():
		return nil, &NoAnswerError{Err: err}
	case err != nil:
		return nil, err
	}
	if names := in.unread(); len(names) > 0 {
		return nil, fmt.Errorf("the solve function does not read %s", quoted(names))
	}
	s := &solved{inputs: in, answer: answer, used: map[string]bool{}, changed: in.changed()}
	return s, s.check()
}

// checkInputs reports a declaration that is incomplete.
func checkInputs(inputs []Input) error {
	var names []string
	for _, p := range inputs {
		switch {
		case !plainName.MatchString(p.Name):
			return fmt.Errorf("input name %q, want lower case letters, digits and _", p.Name)
		case slices.Contains(names, p.Name):
			return fmt.Errorf("input %q is declared twice", p.Name)
		case strings.TrimSpace(p.Label) == "":
			return fmt.Errorf("input %q has no Label", p.Name)
		case strings.TrimSpace(p.Default) == "":
			return fmt.Errorf("input %q has no Default", p.Name)
		}
		names = append(names, p.Name)
	}
	return nil
}

// check reports values that cannot be printed or told apart.
func (s *solved) check() error {
	var names []string
	for _, v := range s.answer.Values {
		switch {
		case v.err != nil:
			return v.err
		case !plainName.MatchString(v.name):
			return fmt.Errorf("value name %q, want lower case letters, digits and _", v.name)
		case slices.Contains(names, v.name) || s.inputs.find(v.name) != nil:
			return fmt.Errorf("two values or inputs are named %q", v.name)
		case strings.TrimSpace(v.text) == "":
			return fmt.Errorf("value %q is empty", v.name)
		}
		names = append(names, v.name)
	}
	if s.answer.Working == nil {
		return nil
	}
	return s.answer.Working.Err()
}

// look returns the value or input named name and notes its use.
func (s *solved) look(name string) (string, error) {
	for _, v := range s.answer.Values {
		if v.name == name {
			s.used[name] = true
			if v.number {
				return unbroken(v.text), nil
			}
			return v.text, nil
		}
	}
	if r := s.inputs.read[name]; r != nil {
		text := r.text
		if s.inputs.find(name).Unit != "" {
			text = unbroken(text)
		}
		return text, nil
	}
	known := s.inputs.names()
	for _, v := range s.answer.Values {
		known = append(known, v.name)
	}
	return "", &UnknownError{Kind: "value or input", Name: name, Known: known}
}

// unused returns the values that nothing prints.
func (s *solved) unused() []string {
	var names []string
	for _, v := range s.answer.Values {
		if !s.used[v.name] {
			names = append(names, v.name)
		}
	}
	return names
}

// quoted returns `"a", "b"`.
func quoted(names []string) string {
	return `"` + strings.Join(names, `", "`) + `"`
}
