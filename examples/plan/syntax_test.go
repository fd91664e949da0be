package plan_test

import (
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
)

// TestGrammar: what is wrong with the text of a description is said with its
// line, in words for somebody who does not know JSON.
func TestGrammar(t *testing.T) {
	for text, want := range map[string]string{
		// It is not there, or stops.
		"":                "the description is empty",
		" \n\ufeff"[:2]:   "the description is empty",
		"\ufeff":          "the description is empty",
		"{\"a\": [1,\n 2": "line 2: the text ends too early; a quote, a bracket or a brace is not closed",
		"{\"a\": \"x":     "line 1: the text ends too early; a quote, a bracket or a brace is not closed",
		// Commas, colons and brackets.
		"{\n\"a\": 1,\n}":         "line 3: '}' is not expected here; there is a comma too many",
		"{\"a\": [1,\n2,]}":       "line 2: ']' is not expected here; there is a comma too many",
		"{\"a\": 1,, \"b\": 2}":   "line 1: ',' is not expected here; there is a comma too many",
		"{\"a\": \"1\"\n\"b\":2}": "line 2: '\"' is not expected here; is a comma missing before it, or a brace or bracket?",
		"[1 2]":                   "line 1: '2' is not expected here; is a comma missing before it, or a brace or bracket?",
		"{\"a\": 1]":              "line 1: ']' is not expected here; is a comma missing before it, or a brace or bracket?",
		"{\"a\" 1}":               "line 1: '1' is not expected here; there is a colon between a name and its value",
		"{\"a\":}":                "line 1: '}' is not expected here; is a value missing before it?",
		"}":                       "line 1: '}' is not expected here; is a value missing before it?",
		"{} {}":                   "line 1: '{' is not expected here; the description has ended before it",
		// Text and quotes.
		"{\"a\": 12 V}":         "line 1: 'V' is not expected here; a quantity stands in double quotes, such as \"12.8 V\"",
		"{\"a\": 12V}":          "line 1: 'V' is not expected here; a quantity stands in double quotes, such as \"12.8 V\"",
		"{\"a\": 1.5 kW}":       "line 1: 'k' is not expected here; a quantity stands in double quotes, such as \"12.8 V\"",
		"{\"a\": 89 %}":         "line 1: '%' is not expected here; a quantity stands in double quotes, such as \"12.8 V\"",
		"{name: 1}":             "line 1: 'n' is not expected here; names and text stand in double quotes; true and false are small",
		"{'a': 1}":              "line 1: '\\'' is not expected here; names and text stand in double quotes; true and false are small",
		"{“a”: 1}":              "line 1: '“' is not expected here; names and text stand in double quotes; true and false are small",
		"{\"a\": True}":         "line 1: 'T' is not expected here; names and text stand in double quotes; true and false are small",
		"{\"a\": \"x\ny\"}":     "line 1: '\\n' is not expected here; a text ends on the line where it begins; is a quote missing?",
		"{\"a\": \"\\q\"}":      "line 1: 'q' is not expected here; a backslash in a text is written twice",
		"{\"a\": \"c:\\data\"}": "line 1: 'd' is not expected here; a backslash in a text is written twice",
		"{\n// x\n\"a\": 1}":    "line 2: '/' is not expected here; JSON has no comments",
		"{\"a\": 1} # x":        "line 1: '#' is not expected here; the description has ended before it",
		// Encodings.
		"\xff\xfe{\x00}\x00":  "the text is in UTF-16; save it in UTF-8",
		"\xfe\xff\x00{":       "the text is in UTF-16; save it in UTF-8",
		"{\n\"a\": \"\xe9\"}": "line 2: the text is not in UTF-8; save it so",
		// Depth.
		strings.Repeat("[", 40) + "\n" + strings.Repeat("]", 40):      "line 1: nested too deep",
		strings.Repeat("{\"a\":", 40) + "1" + strings.Repeat("}", 40): "line 1: nested too deep",
	} {
		if _, err := plan.Read([]byte(text)); err == nil || err.Error() != want {
			t.Errorf("%q:\n got %v\nwant %s", text, err, want)
		}
	}
}
