package plan

import (
	"errors"
	"strconv"
	"strings"
)

// ErrDescription is what every [*DescriptionError] matches under [errors.Is].
var ErrDescription = errors.New("mistake in the description")

// A Problem is one mistake in a description.
type Problem struct {
	Path    string // of the field, such as "loads[3].power"
	Value   string // as written; empty if the field is missing
	Allowed string // what it should be
}

// noSuchField is how what is allowed begins where nothing is.
const noSuchField = "no such field"

// String returns "loads[3].power = "12 V", want ...".
func (p Problem) String() string {
	switch {
	case p.Value == "":
		return p.Path + " is missing, want " + p.Allowed
	case strings.HasPrefix(p.Allowed, noSuchField):
		return p.Path + " = " + p.Value + ": " + p.Allowed
	}
	return p.Path + " = " + p.Value + ", want " + p.Allowed
}

// A DescriptionError reports every mistake that was found in a description.
// Nothing of the description is then used.
type DescriptionError struct {
	Problems []Problem // those of single fields in the order of the description, then what does not fit between fields
}

// Error returns one mistake a line.
func (e *DescriptionError) Error() string {
	var b strings.Builder
	b.WriteString(strconv.Itoa(len(e.Problems)) + " mistakes in the description of the rig:")
	if len(e.Problems) == 1 {
		b.Reset()
		b.WriteString("a mistake in the description of the rig:")
	}
	for _, p := range e.Problems {
		b.WriteString("\n  " + p.String())
	}
	return b.String()
}

// Unwrap returns [ErrDescription].
func (e *DescriptionError) Unwrap() error { return ErrDescription }
