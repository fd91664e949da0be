package loads

import (
	"errors"
	"fmt"

	"example.com/drawbar/units"
)

// An EntryError says which bus or load of a list an error is about. It wraps
// that error, so that errors.As finds its [*units.RangeError].
type EntryError struct {
	Entry string // "bus" or "load"
	Index int    // in the list, from 0
	Name  string // as given
	Err   error  // a [*units.RangeError]
}

// Error returns `load 2 "water pump": loads.Audit: Count = 0, want >= 1`, the
// entries counted from 0.
func (e *EntryError) Error() string {
	return fmt.Sprintf("%s %d %q: %v", e.Entry, e.Index, e.Name, e.Err)
}

// Unwrap returns Err.
func (e *EntryError) Unwrap() error { return e.Err }

// faults are the errors found so far.
type faults []error

func (f *faults) add(err error) {
	if err != nil {
		*f = append(*f, err)
	}
}

// addEntry adds each of list as an error of one entry.
func (f *faults) addEntry(entry string, index int, name string, list faults) {
	for _, err := range list {
		f.add(&EntryError{Entry: entry, Index: index, Name: name, Err: err})
	}
}

// join returns the faults as one error, nil if there are none.
func (f faults) join() error {
	if len(f) == 1 {
		return f[0]
	}
	return errors.Join(f...)
}

// named reports an empty name.
func named(op, field, name string) error {
	if name != "" {
		return nil
	}
	return &units.RangeError{Op: op, Field: field, Value: `""`, Allowed: wording("a name")}
}
