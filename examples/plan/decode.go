package plan

import (
	"encoding"
	"errors"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/drawbar/units"
)

// A decoder fills Go values from JSON nodes and keeps every mistake. A struct
// field takes the name of its json tag, or its own in lower case; it may be left out if the tag says
// omitzero. Its allowed tag says in an error what is wanted.
type decoder struct {
	problems []Problem
}

func (d *decoder) fail(path, value, allowed string) {
	d.problems = append(d.problems, Problem{Path: path, Value: value, Allowed: allowed})
}

var textUnmarshaler = reflect.TypeFor[encoding.TextUnmarshaler]()

// value fills v from n.
func (d *decoder) value(path string, n node, v reflect.Value, allowed string) {
	if n.kind == nullNode {
		d.fail(path, "null", "a value; leave the field out if there is none")
		return
	}
	if v.CanAddr() && v.Addr().Type().Implements(textUnmarshaler) {
		d.text(path, n, v.Addr().Interface().(encoding.TextUnmarshaler), allowed)
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		d.value(path, n, v.Elem(), allowed)
	case reflect.Struct:
		d.object(path, n, v)
	case reflect.Slice:
		d.list(path, n, v, allowed)
	case reflect.String:
		if d.is(path, n, stringNode, allowed) {
			v.SetString(strings.TrimSpace(n.text))
			if wrong := wrongText(v.String()); wrong != "" {
				d.fail(path, n.String(), wrong)
			}
		}
	case reflect.Bool:
		if d.is(path, n, boolNode, allowed) {
			v.SetBool(n.text == "true")
		}
	case reflect.Int:
		if !d.is(path, n, numberNode, allowed) {
			return
		}
		i, err := strconv.Atoi(n.text)
		if err != nil || i < 1 {
			d.fail(path, n.text, or(allowed, "a whole number of 1 or more"))
			return
		}
		v.SetInt(int64(i))
	}
}

// Text that a table of 80 columns can hold.
const (
	longestWord = 30
	longestText = 300
)

// wrongText says what is wanted instead of text that would spoil the plan; it
// is empty if nothing is wrong.
func wrongText(text string) string {
	if text == "" {
		return "text that is not empty"
	}
	if utf8.RuneCountInString(text) > longestText {
		return "text of at most " + strconv.Itoa(longestText) + " characters"
	}
	for _, r := range text {
		// Formatting characters turn the direction of what follows, or hide.
		if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Zl, r) || unicode.Is(unicode.Zp, r) || r == unicode.ReplacementChar {
			return "text in one line, without control characters"
		}
	}
	for _, word := range strings.Fields(text) {
		if utf8.RuneCountInString(word) > longestWord {
			return "words of at most " + strconv.Itoa(longestWord) + " characters"
		}
	}
	return ""
}

// is reports whether n is of the kind, and keeps a mistake if not.
func (d *decoder) is(path string, n node, kind nodeKind, allowed string) bool {
	if n.kind != kind {
		d.fail(path, n.String(), or(allowed, kind.String()))
	}
	return n.kind == kind
}

// text fills a value that is written as text: a quantity, a size, a choice.
func (d *decoder) text(path string, n node, into encoding.TextUnmarshaler, allowed string) {
	if n.kind != stringNode || strings.TrimSpace(n.text) == "" {
		d.fail(path, n.String(), or(allowed, "text with a unit, such as \"12.8 V\""))
		return
	}
	err := into.UnmarshalText([]byte(n.text))
	if err == nil {
		return
	}
	var parse *units.ParseError
	var limits *units.RangeError
	switch {
	case allowed != "":
	case errors.As(err, &parse):
		allowed = parse.Want + ": " + parse.Reason
	case errors.As(err, &limits):
		allowed = limits.Allowed.String()
	default:
		allowed = err.Error()
	}
	d.fail(path, n.String(), allowed)
}

// list fills a slice.
func (d *decoder) list(path string, n node, v reflect.Value, allowed string) {
	if !d.is(path, n, arrayNode, allowed) {
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(n.members), len(n.members)))
	for i, member := range n.members {
		d.value(path+"["+strconv.Itoa(i)+"]", member, v.Index(i), allowed)
	}
}

// object fills a struct.
func (d *decoder) object(path string, n node, v reflect.Value) {
	if !d.is(path, n, objectNode, "") {
		return
	}
	t := v.Type()
	var known []string
	for i := range t.NumField() {
		name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		known = append(known, or(name, strings.ToLower(t.Field(i).Name)))
	}
	seen := map[string]bool{}
	for i, name := range n.names {
		at := join(path, name)
		field := slices.Index(known, name)
		switch {
		case field < 0:
			d.fail(at, n.members[i].String(), "no such field; there are "+strings.Join(known, ", ")+didYouMean(name, known))
		case seen[name]:
			d.fail(at, n.members[i].String(), "the field once only")
		default:
			d.value(at, n.members[i], v.Field(field), t.Field(field).Tag.Get("allowed"))
		}
		seen[name] = true
	}
	for i, name := range known {
		if optional := strings.HasSuffix(t.Field(i).Tag.Get("json"), ",omitzero"); !seen[name] && !optional {
			d.fail(join(path, name), "", or(t.Field(i).Tag.Get("allowed"), kindName(t.Field(i).Type)))
		}
	}
}

// kindName says what a missing field of type t would be.
func kindName(t reflect.Type) string {
	if reflect.PointerTo(t).Implements(textUnmarshaler) {
		return strings.ToLower(t.Name()) + " as text with a unit"
	}
	switch t.Kind() {
	case reflect.Slice:
		return arrayNode.String()
	case reflect.Struct, reflect.Pointer:
		return objectNode.String()
	case reflect.Int:
		return "a whole number"
	case reflect.Bool:
		return boolNode.String()
	}
	return stringNode.String()
}

// join returns the path of a field. A name that no field could have is quoted.
func join(path, name string) string {
	if strings.ContainsFunc(name, func(r rune) bool { return r != '_' && !unicode.IsLetter(r) && !unicode.IsDigit(r) }) || utf8.RuneCountInString(name) > longestWord {
		name = strconv.Quote(shortened(name))
	}
	if path == "" {
		return name
	}
	return path + "." + name
}

// or returns the first of its arguments that is not empty.
func or(a, b string) string {
	if a != "" {
		return a
	}
	return b
}
