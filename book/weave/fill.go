package weave

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
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
		if value == "" {
			return fail(fmt.Errorf("placeholder %s is empty", match))
		}
		return escape(value)
	})
	if rest := placeholder.ReplaceAllString(text, ""); strings.Contains(rest, "{{") || strings.Contains(rest, "}}") {
		fail(errors.New("{{ and }} belong around a name"))
	}
	return filled, first
}

// escape returns text, which is plain, as Markdown that reads the same. The
// dollar begins math where the Markdown is read.
func escape(text string) string {
	return markdownEscapes.Replace(text)
}

var markdownEscapes = strings.NewReplacer(
	`\`, `\\`, "`", "\\`", `*`, `\*`, `_`, `\_`, `[`, `\[`, `]`, `\]`,
	`<`, `\<`, `&`, `\&`, `|`, `\|`, `~`, `\~`, `$`, `\$`, `#`, `\#`, "\n", " ",
)
