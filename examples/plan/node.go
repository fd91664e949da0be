package plan

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"strconv"
	"unicode/utf8"
)

// A node is a JSON value as it was written, with duplicate names kept.
type node struct {
	kind    nodeKind
	text    string // of a string, a number, a bool
	names   []string
	members []node // of an object, beside names, or of an array
}

type nodeKind uint8

const (
	nullNode nodeKind = iota
	boolNode
	numberNode
	stringNode
	arrayNode
	objectNode
)

// String returns what the kind is called.
func (k nodeKind) String() string {
	return [...]string{"null", "true or false", "a number", "text", "a list", "an object"}[k]
}

// String returns n as an error shows it.
func (n node) String() string {
	switch n.kind {
	case stringNode:
		return strconv.Quote(shortened(n.text))
	case boolNode, numberNode:
		return shortened(n.text)
	}
	return n.kind.String()
}

// shortened returns text with its middle left out if it is long.
func shortened(text string) string {
	const longest, head = 60, 40
	r := []rune(text)
	if len(r) <= longest {
		return text
	}
	return string(r[:head]) + " ... " + string(r[len(r)-longest+head:])
}

// maxDepth is far deeper than any description; it keeps hostile input from
// exhausting the stack.
const maxDepth = 32

var errDeep = errors.New("nested too deep")

// parseJSON returns the one value in data.
func parseJSON(data []byte) (node, error) {
	if bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")) {
		return node{}, errors.New("the text is in UTF-16; save it in UTF-8")
	}
	// Some editors put a byte order mark in front.
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if len(bytes.TrimSpace(data)) == 0 {
		return node{}, errors.New("the description is empty")
	}
	for rest, line := data, 1; len(rest) > 0; line++ {
		text, after, _ := bytes.Cut(rest, []byte{'\n'})
		if !utf8.Valid(text) {
			return node{}, fmt.Errorf("line %d: the text is not in UTF-8; save it so", line)
		}
		rest = after
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.UseNumber()
	n, err := parseValue(d, 0)
	if errors.Is(err, errDeep) {
		return node{}, fmt.Errorf("line %d: %w", lineOf(data, int(d.InputOffset())), err)
	}
	if wrong := grammar(data); wrong != nil {
		err = wrong
	}
	return n, err
}

// lineOf returns the line that a place in data is on.
func lineOf(data []byte, offset int) int {
	return 1 + bytes.Count(data[:min(offset, len(data))], []byte{'\n'})
}

func parseValue(d *json.Decoder, depth int) (node, error) {
	if depth > maxDepth {
		return node{}, errDeep
	}
	token, err := d.Token()
	if err != nil {
		return node{}, err
	}
	switch v := token.(type) {
	case json.Delim:
		return parseMembers(d, v, depth)
	case string:
		return node{kind: stringNode, text: v}, nil
	case json.Number:
		return node{kind: numberNode, text: v.String()}, nil
	case bool:
		return node{kind: boolNode, text: strconv.FormatBool(v)}, nil
	}
	return node{}, nil
}

// parseMembers reads an object or an array whose opening bracket is read.
func parseMembers(d *json.Decoder, open json.Delim, depth int) (node, error) {
	n := node{kind: arrayNode}
	if open == '{' {
		n.kind = objectNode
	}
	for d.More() {
		if n.kind == objectNode {
			name, err := d.Token()
			if err != nil {
				return node{}, err
			}
			n.names = append(n.names, fmt.Sprint(name))
		}
		member, err := parseValue(d, depth+1)
		if err != nil {
			return node{}, err
		}
		n.members = append(n.members, member)
	}
	_, err := d.Token()
	return n, err
}
