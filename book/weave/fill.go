package weave

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"unicode"
)

// Names of blocks, inputs and values, of topics, and what may stand in a
// placeholder.
var (
	plainName       = regexp.MustCompile(`^[a-z][a-z0-9_]*$`)
	topicName       = regexp.MustCompile(`^[a-z][a-z0-9]*$`)
	placeholder     = regexp.MustCompile(`\{\{([^{}]*)\}\}`)
	placeholderName = regexp.MustCompile(`^(?:[a-z][a-z0-9_]*\.)?[a-z][a-z0-9_]*$`)
)

// fill replaces the placeholders of text by what look returns for them.
func fill(text string, look func(name string) (string, error)) (string, error) {
	var first error
	fail := func(err error) string {
		if first == nil {
			first = err
		}
		return ""
	}
	filled := placeholder.ReplaceAllStringFunc(text, func(match string) string {
		name := match[2 : len(match)-2]
		if !placeholderName.MatchString(name) {
			return fail(fmt.Errorf("placeholder %s, want {{name}} or {{example.name}}", match))
		}
		value, err := look(name)
		if err != nil {
			return fail(err)
		}
		return escape(value)
	})
	if rest := placeholder.ReplaceAllString(text, ""); strings.Contains(rest, "{{") || strings.Contains(rest, "}}") {
		fail(errors.New("{{ and }} belong around a name"))
	}
	return filled, first
}

// escape returns text, which is plain, as Markdown that reads the same behind
// other text. The dollar begins math where the Markdown is read.
func escape(text string) string {
	runes := []rune(strings.ReplaceAll(text, "\n", " "))
	at := func(i int) rune {
		if i < 0 || i >= len(runes) {
			return ' '
		}
		return runes[i]
	}
	var b strings.Builder
	for i, r := range runes {
		if isMarkup(at(i-1), r, at(i+1)) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}

// isMarkup reports whether r may have a meaning in Markdown, between before
// and after.
func isMarkup(before, r, after rune) bool {
	switch r {
	case '_': // emphasis, but not inside a word
		return !isWord(before) || !isWord(after)
	case '&': // an entity
		return isWord(after) || after == '#'
	}
	return strings.ContainsRune("\\`*[]<|~$#", r)
}

func isWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }
