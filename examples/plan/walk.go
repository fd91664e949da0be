package plan

import (
	"fmt"
	"reflect"
	"regexp"
	"strconv"
	"strings"

	"example.com/drawbar/units"
)

// A field is a place in a description with what is there.
type field struct {
	path     string // such as "loads[3].power"
	value    reflect.Value
	optional bool // may be left out
}

// fieldName returns what a description calls a field of a struct: the name in
// its json tag, under which it is written too.
func fieldName(f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	return name
}

// isOptional reports whether a field may be left out.
func isOptional(f reflect.StructField) bool { return strings.HasSuffix(f.Tag.Get("json"), ",omitzero") }

// isText reports whether values of type t are written as text of their own.
func isText(t reflect.Type) bool { return reflect.PointerTo(t).Implements(textUnmarshaler) }

// fields returns everything of a description that is not made of parts, in its
// order.
func fields(r Rig) (all []field) {
	var below func(f field)
	below = func(f field) {
		switch v := f.value; {
		case v.Kind() == reflect.Pointer:
			if !v.IsNil() {
				below(field{f.path, v.Elem(), f.optional})
			}
		case v.Kind() == reflect.Slice:
			for i := range v.Len() {
				below(field{f.path + "[" + strconv.Itoa(i) + "]", v.Index(i), false})
			}
		case v.Kind() == reflect.Struct && !isText(v.Type()):
			for i := range v.NumField() {
				part := v.Type().Field(i)
				below(field{join(f.path, fieldName(part)), v.Field(i), isOptional(part)})
			}
		default:
			all = append(all, f)
		}
	}
	below(field{value: reflect.ValueOf(r)})
	return all
}

// index is the number of an entry in a path.
var index = regexp.MustCompile(`\[[0-9]+\]`)

// inLists returns a path without the numbers of entries: "loads[].power".
func inLists(path string) string { return index.ReplaceAllString(path, "[]") }

// checkFields holds every field against its limits. A rig that was made in Go
// can break them as a text can.
func (d *decoder) checkFields(r Rig) {
	for _, f := range fields(r) {
		switch {
		case f.optional && isZero(f.value):
		case f.value.Kind() == reflect.String && f.value.Len() == 0:
			d.fail(f.path, "", "text that is not empty")
		default:
			d.inLimits(f.path, f.value, shownIn(f.value))
		}
	}
}

// shownIn returns a value as a description has it: a time in hours, as people
// write it there.
func shownIn(v reflect.Value) string {
	switch t := v.Interface().(type) {
	case units.Elapsed:
		return strconv.Quote(inHours(t))
	case units.Opt[units.Elapsed]:
		return strconv.Quote(inHours(t.Or(0)))
	}
	if v.Kind() == reflect.Int || v.Kind() == reflect.Bool {
		return fmt.Sprint(v.Interface())
	}
	return strconv.Quote(fmt.Sprint(v.Interface()))
}

// inHours returns a time in hours, but for one of less.
func inHours(t units.Elapsed) string {
	if t > -units.Hour && t < units.Hour {
		return t.String()
	}
	return quantity(t, "h", digitsInJSON)
}

// inLimits keeps a mistake if v, which is written as shown, is out of the
// limits of its field.
func (d *decoder) inLimits(path string, v reflect.Value, shown string) {
	if d.limits == nil {
		d.limits = limits()
	}
	l, ok := d.limits[inLists(path)]
	if !ok {
		return // not a quantity
	}
	if allowed, within := l(v.Interface()); !within {
		d.fail(path, shown, allowed)
	}
}
