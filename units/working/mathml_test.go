package working_test

import (
	"encoding/xml"
	"errors"
	"io"
	"slices"
	"strings"
	"testing"
)

// childrenOf is how many children the elements of MathML Core that are used
// may have: -1 for any number of elements, 0 for text alone.
var childrenOf = map[string]int{"math": -1, "mrow": -1, "mtable": -1, "mtr": -1, "mtd": -1, "msqrt": -1,
	"mfrac": 2, "msup": 2, "msub": 2, "mi": 0, "mn": 0, "mo": 0, "mtext": 0}

// An element is one of a parsed document; text of a token in text.
type element struct {
	tag      string
	text     string
	children []element
}

// parseXML reads one element, strictly.
func parseXML(t testing.TB, s string) element {
	t.Helper()
	stack := []element{{tag: "document"}}
	d := xml.NewDecoder(strings.NewReader(s))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("not well-formed: %v\n%s", err, s)
		}
		top := &stack[len(stack)-1]
		switch token := token.(type) {
		case xml.StartElement:
			stack = append(stack, element{tag: token.Name.Local})
		case xml.CharData:
			top.text += string(token)
		case xml.EndElement:
			done := *top
			stack = stack[:len(stack)-1]
			parent := &stack[len(stack)-1]
			parent.children = append(parent.children, done)
		}
	}
	if len(stack) != 1 || len(stack[0].children) != 1 {
		t.Fatalf("want one element:\n%s", s)
	}
	return stack[0].children[0]
}

// checkMathML fails unless s is one math element of MathML Core whose
// elements have the children that they need.
func checkMathML(t testing.TB, s string) {
	t.Helper()
	var check func(e element)
	check = func(e element) {
		want, known := childrenOf[e.tag]
		switch {
		case !known:
			t.Errorf("<%s> is not used in MathML here:\n%s", e.tag, s)
		case want == 0 && (len(e.children) > 0 || e.text == ""):
			t.Errorf("<%s> holds something other than text:\n%s", e.tag, s)
		case want != 0 && strings.TrimSpace(e.text) != "":
			t.Errorf("<%s> holds the text %q:\n%s", e.tag, e.text, s)
		case want > 0 && len(e.children) != want:
			t.Errorf("<%s> has %d children, want %d:\n%s", e.tag, len(e.children), want, s)
		}
		for _, c := range e.children {
			check(c)
		}
	}
	root := parseXML(t, s)
	if root.tag != "math" {
		t.Errorf("<%s>, want <math>:\n%s", root.tag, s)
	}
	check(root)
}

// find returns all elements of a tag, in order.
func (e element) find(tag string) []element {
	var found []element
	if e.tag == tag {
		found = append(found, e)
	}
	for _, c := range e.children {
		found = slices.Concat(found, c.find(tag))
	}
	return found
}
