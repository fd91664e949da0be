package plan

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// grammar returns what is wrong with the grammar of data, with its line, for
// somebody who types a description by hand; nil if it is JSON.
func grammar(data []byte) error {
	var whole json.RawMessage
	var syntax *json.SyntaxError
	if err := json.Unmarshal(data, &whole); !errors.As(err, &syntax) {
		return err
	}
	if strings.Contains(syntax.Error(), "unexpected end") {
		return fmt.Errorf("line %d: the text ends too early; a quote, a bracket or a brace is not closed", lineOf(data, len(data)))
	}
	// The offset counts the character that does not fit.
	at := max(int(syntax.Offset)-1, 0)
	r, _ := utf8.DecodeRune(data[at:])
	return fmt.Errorf("line %d: %q is not expected here; %s", lineOf(data, at), r, misfit(data[:at], r, syntax.Error()))
}

// misfit says what was probably meant where r does not fit behind what is
// before it; why is what package encoding/json says.
func misfit(before []byte, r rune, why string) string {
	in := func(part string) bool { return strings.Contains(why, part) }
	last := byte(' ')
	if trimmed := bytes.TrimSpace(before); len(trimmed) > 0 {
		last = trimmed[len(trimmed)-1]
	}
	switch {
	case in("top-level"):
		return "the description has ended before it"
	case in("escape code"):
		return "a backslash in a text is written twice"
	case in("string literal"):
		return "a text ends on the line where it begins; is a quote missing?"
	case r == '/' || r == '#':
		return "JSON has no comments"
	case r == ',' || last == ',' && (r == '}' || r == ']'):
		return "there is a comma too many"
	case unicode.IsDigit(rune(last)) && !unicode.IsDigit(r) && !strings.ContainsRune("{}[]:\"", r):
		return "a quantity stands in double quotes, such as \"12.8 V\""
	case in("after object key:value pair"), in("after array element"):
		return "is a comma missing before it, or a brace or bracket?"
	case in("after object key"):
		return "there is a colon between a name and its value"
	case unicode.IsLetter(r), r == '\'', r == '“', r == '”', r == '_':
		return "names and text stand in double quotes; true and false are small"
	}
	return "is a value missing before it?"
}
