package plan

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/drawbar/units"
)

// Mistakes are those found so far in a description.
type mistakes struct {
	problems []Problem
	lost     []string // paths of what was meant by a field that is misspelt
}

// fail keeps a mistake. The same one may be found by every calculator that is
// asked about a part.
func (m *mistakes) fail(path, value, allowed string) {
	if p := (Problem{Path: path, Value: value, Allowed: allowed}); !slices.Contains(m.problems, p) {
		m.problems = append(m.problems, p)
	}
}

// sound reports whether no mistake is known at a path, below it or of all that
// it is in, so that what rests on it can be looked at: one cause is one mistake.
func (m *mistakes) sound(path string) bool {
	touches := func(other string) bool { return under(other, path) || under(path, other) }
	return !slices.ContainsFunc(m.lost, touches) && !slices.ContainsFunc(m.problems, func(p Problem) bool { return touches(p.Path) })
}

// under reports whether a path is another or below it.
func under(path, other string) bool {
	rest, ok := strings.CutPrefix(path, other)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}

// allSound is sound for all of some paths, with spaces between.
func (m *mistakes) allSound(paths string) bool {
	for path := range strings.FieldsSeq(paths) {
		if !m.sound(path) {
			return false
		}
	}
	return true
}

// ok reports whether err is nil, and keeps what it says if not. The path is
// that of the part which the calculator was asked about; the field that it
// names is looked up in [fieldPath].
func (m *mistakes) ok(path string, err error) bool {
	if err == nil {
		return true
	}
	if many, ok := err.(interface{ Unwrap() []error }); ok {
		for _, e := range many.Unwrap() {
			m.ok(path, e)
		}
		return false
	}
	var limits *units.RangeError
	if !errors.As(err, &limits) {
		m.fail(path, "refused", "another: "+err.Error())
		return false
	}
	m.fail(pathOf(path, limits.Field), strconv.Quote(shortened(fmt.Sprint(limits.Value))), allowedInWords(limits.Allowed.String()))
	return false
}
