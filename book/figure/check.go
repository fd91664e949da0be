package figure

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/drawbar/units"
)

// wanted says in words what an input may be.
type wanted string

func (w wanted) String() string { return string(w) }

// refuse returns the error of a field that is not as it must be.
func refuse(op, field string, value any, want string) error {
	return &units.RangeError{Op: op, Field: field, Value: value, Allowed: wanted(want)}
}

// element returns the name of the i-th element of a field.
func element(field string, i int) string { return field + "[" + strconv.Itoa(i) + "]" }

// checkPrintable reports a text that is empty, has spaces around it or
// characters that do not print. Those which do are all allowed in XML.
func checkPrintable(op, field, text string) error {
	hidden := func(r rune) bool { return !unicode.IsGraphic(r) }
	switch {
	case text == "":
		return refuse(op, field, text, "a text")
	case strings.TrimSpace(text) != text:
		return refuse(op, field, text, "no space around it")
	case !utf8.ValidString(text) || strings.ContainsFunc(text, hidden):
		return refuse(op, field, text, "printable characters in UTF-8")
	}
	return nil
}

// checkText is checkPrintable, and reports a text wider than most as well.
func checkText(op, field, text string, size, most int) error {
	if err := checkPrintable(op, field, text); err != nil {
		return err
	}
	if textWidth(text, size) > most {
		const perCharacter = 60 // hundredths of the font size, about
		return refuse(op, field, text, "about "+strconv.Itoa(most/(size*perCharacter))+" characters at most")
	}
	return nil
}

// checkHead checks what every figure has.
func checkHead(op, title, description string) error {
	if err := checkPrintable(op, "Title", title); err != nil {
		return err
	}
	if wrapTitle(title) == nil {
		return refuse(op, "Title", title, "at most two lines of about 60 characters")
	}
	if err := checkPrintable(op, "Description", description); err != nil {
		return err
	}
	const most = 2000
	if n := utf8.RuneCountInString(description); n > most {
		return refuse(op, "len(Description)", n, "at most "+strconv.Itoa(most)+" characters")
	}
	return nil
}

// checkCount reports a count that is not in low to high.
func checkCount(op, field string, n, low, high int) error {
	want := strconv.Itoa(low)
	if high > low {
		want += " to " + strconv.Itoa(high)
	}
	if n < low || n > high {
		return refuse(op, "len("+field+")", n, want)
	}
	return nil
}

// names are those of a figure so far.
type names []string

// add checks that a name can be drawn and is a new one.
func (n *names) add(op, field, name string) error {
	if err := checkText(op, field, name, nameSize, longestName); err != nil {
		return err
	}
	if slices.Contains(*n, name) {
		return refuse(op, field, name, "a name of its own")
	}
	*n = append(*n, name)
	return nil
}
