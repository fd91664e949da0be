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
	"example.com/drawbar/units/working"
)

// A decoder fills Go values from JSON nodes and keeps every mistake.
type decoder struct {
	mistakes
	limits map[string]limit // those of limits, once they are asked for
}

var textUnmarshaler = reflect.TypeFor[encoding.TextUnmarshaler]()

// value fills v from n.
func (d *decoder) value(path string, n node, v reflect.Value) {
	if n.kind == nullNode {
		d.fail(path, "null", "a value; leave the field out if there is none")
		return
	}
	if isText(v.Type()) {
		d.text(path, n, v)
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		d.value(path, n, v.Elem())
	case reflect.Struct:
		d.object(path, n, v)
	case reflect.Slice:
		d.list(path, n, v)
	case reflect.String:
		if d.is(path, n, stringNode) {
			text := strings.TrimSpace(n.text)
			if wrong := wrongText(text); wrong != "" {
				d.fail(path, n.String(), wrong)
				return
			}
			v.SetString(text)
		}
	case reflect.Bool:
		if d.is(path, n, boolNode) {
			v.SetBool(n.text == "true")
		}
	case reflect.Int:
		d.whole(path, n, v)
	}
}

// Text that a table of 80 columns can hold.
const (
	longestWord = 30
	longestText = 300
)

const zeroWidthNonJoiner, zeroWidthJoiner = '\u200c', '\u200d'

// wrongText says what is wanted instead of text that would spoil the plan; it
// is empty if nothing is wrong.
func wrongText(text string) string {
	if text == "" {
		return "text that is not empty"
	}
	if utf8.RuneCountInString(text) > longestText {
		return "text of at most " + strconv.Itoa(longestText) + " characters"
	}
	inWord := 0
	for _, r := range text {
		switch {
		case r == zeroWidthNonJoiner || r == zeroWidthJoiner: // some scripts are not written without
		// Other formatting characters turn the direction of what follows, or hide.
		case unicode.IsControl(r), unicode.In(r, unicode.Cf, unicode.Zl, unicode.Zp), r == unicode.ReplacementChar:
			return "text in one line, without control characters"
		case unicode.IsSpace(r), working.Columns(string(r)) > 1: // a line can break there
			inWord = 0
		default:
			inWord++
		}
		if inWord > longestWord {
			return "words of at most " + strconv.Itoa(longestWord) + " characters"
		}
	}
	return ""
}

// is reports whether n is of the kind, and keeps a mistake if not.
func (d *decoder) is(path string, n node, kind nodeKind) bool {
	if n.kind != kind {
		d.fail(path, n.String(), kind.String())
	}
	return n.kind == kind
}

// A number of things is one of these.
const (
	aNumber = "a number, without quotes"
	aWhole  = "a whole number, without quotes"
)

// whole fills a number of things.
func (d *decoder) whole(path string, n node, v reflect.Value) {
	if n.kind != numberNode {
		d.fail(path, n.String(), aNumber)
		return
	}
	i, err := strconv.Atoi(n.text)
	if errors.Is(err, strconv.ErrSyntax) {
		d.fail(path, n.String(), aWhole)
		return
	}
	// One that no int holds has become the largest, which is above any limit.
	v.SetInt(int64(i))
	d.inLimits(path, v, n.String())
}

// text fills a value that is written as text: a quantity, a size, a choice.
func (d *decoder) text(path string, n node, v reflect.Value) {
	if n.kind != stringNode || strings.TrimSpace(n.text) == "" {
		d.fail(path, n.String(), textOf(v.Type()))
		return
	}
	err := v.Addr().Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(n.text))
	var parse *units.ParseError
	var limits *units.RangeError
	switch {
	case err == nil:
		d.inLimits(path, v, n.String())
	case errors.As(err, &parse):
		d.fail(path, n.String(), reasonOf(parse))
	case errors.As(err, &limits):
		d.fail(path, n.String(), limits.Allowed.String())
	default:
		d.fail(path, n.String(), err.Error())
	}
}

// list fills a slice.
func (d *decoder) list(path string, n node, v reflect.Value) {
	if !d.is(path, n, arrayNode) {
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(n.members), len(n.members)))
	for i, member := range n.members {
		d.value(path+"["+strconv.Itoa(i)+"]", member, v.Index(i))
	}
}

// object fills a struct.
func (d *decoder) object(path string, n node, v reflect.Value) {
	if !d.is(path, n, objectNode) {
		return
	}
	t := v.Type()
	var known []string
	for i := range t.NumField() {
		known = append(known, fieldName(t.Field(i)))
	}
	seen := map[string]bool{}
	for i, name := range n.names {
		at := join(path, name)
		field := slices.Index(known, name)
		switch {
		case field < 0:
			d.fail(at, n.members[i].String(), noSuchField+"; there are "+strings.Join(known, ", ")+didYouMean(name, known))
			// What was meant is not missing as well.
			if meant := nearest(name, known); meant != "" && !slices.Contains(n.names, meant) {
				seen[meant], d.lost = true, append(d.lost, join(path, meant))
			}
		case seen[name]:
			d.fail(at, n.members[i].String(), "the field once only")
		default:
			d.value(at, n.members[i], v.Field(field))
		}
		seen[name] = true
	}
	for i, name := range known {
		if !seen[name] && !isOptional(t.Field(i)) {
			d.fail(join(path, name), "", kindOf(t.Field(i).Type))
		}
	}
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
