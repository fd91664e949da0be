package weave

import (
	"errors"
	"fmt"
	"strings"
)

// A Setting changes an input of an example.
type Setting struct {
	Input string // its name
	Value string // as a person writes it, such as "30 A"
}

// Weave runs all of c with the default inputs. Errors are joined, each an
// [*Error].
func Weave(c Chapter) (*Woven, error) {
	w, err := newWeaver(c, "", nil)
	if err != nil {
		return nil, err
	}
	elements := w.opening()
	for i, b := range c.Blocks {
		made, err := w.compose(b)
		if err != nil {
			w.fail(blockName(b, i), err)
		}
		elements = append(elements, made...)
	}
	if len(w.errs) == 0 { // what failed may use it
		w.checkUse()
	}
	if len(w.errs) > 0 {
		return nil, errors.Join(w.errs...)
	}
	return &Woven{chapter: c, elements: elements, part: "chapter"}, nil
}

// WeaveExample runs the worked example or the exercise of c named example
// with inputs changed, and gives a chapter of that alone. Published results
// are for the default inputs and are left out if any is changed. Every error
// is an [*Error], or several joined; it wraps an [*InputError] for a value
// refused, a [*NoAnswerError] for inputs that have no answer together, and an
// [*UnknownError] for a name that does not exist.
func WeaveExample(c Chapter, example string, set []Setting) (*Woven, error) {
	w, err := newWeaver(c, example, set)
	if err != nil {
		return nil, err
	}
	var known []string
	for i, b := range c.Blocks {
		name, part := changeable(b)
		if part == "" {
			continue
		}
		if known = append(known, name); name != example {
			if part == exercisePart { // they are numbered as in the chapter
				w.exercises++
			}
			continue
		}
		made, err := w.compose(b)
		if err != nil {
			return nil, &Error{Chapter: c.Topic, Block: blockName(b, i), Err: err}
		}
		elements := append([]element{heading{level: 1, text: c.Title}}, made...)
		return &Woven{chapter: c, elements: elements, part: part}, nil
	}
	return nil, &Error{Chapter: c.Topic, Err: &UnknownError{Kind: "example", Name: example, Known: known}}
}

// A weaver turns the blocks of one chapter into elements.
type weaver struct {
	chapter   Chapter
	functions functions
	solved    map[string]*solved // by the name of the block
	level     int                // of the last heading in prose
	exercises int                // so far
	alone     string             // the name of the only block, empty for a whole chapter
	errs      []error

	figures, alternatives map[string]bool // names and alternative texts so far
}

// newWeaver returns a weaver that has run all solve functions of c, one of
// them with changed inputs.
func newWeaver(c Chapter, example string, set []Setting) (*weaver, error) {
	w := &weaver{chapter: c, level: 1, alone: example,
		solved: map[string]*solved{}, figures: map[string]bool{}, alternatives: map[string]bool{}}
	w.checkHead()
	var err error
	if w.functions, err = readFunctions(c.Source); err != nil {
		w.fail("", err)
		return nil, errors.Join(w.errs...)
	}
	for i, b := range c.Blocks {
		n, ok := namedBlock(b)
		if !ok {
			continue
		}
		var changes []Setting
		if _, part := changeable(b); part != "" && n.name == example {
			changes = set
		}
		if err := w.run(n, changes); err != nil {
			w.fail(blockName(b, i), err)
		}
	}
	return w, errors.Join(w.errs...)
}

// fail keeps an error of a block.
func (w *weaver) fail(block string, err error) {
	w.errs = append(w.errs, &Error{Chapter: w.chapter.Topic, Block: block, Err: err})
}

func (w *weaver) checkHead() {
	c := w.chapter
	switch {
	case !topicName.MatchString(c.Topic):
		w.fail("", fmt.Errorf("topic %q, want lower case letters and digits", c.Topic))
	case strings.TrimSpace(c.Title) == "":
		w.fail("", errors.New("no Title"))
	case strings.TrimSpace(c.Question) == "":
		w.fail("", errors.New("no Question"))
	case len(c.Blocks) == 0:
		w.fail("", errors.New("no Blocks"))
	}
}

const exercisePart = "exercise"

// changeable returns the name of a block that a reader may work again with
// other inputs, and what part of a chapter it is; nothing for another block.
func changeable(b Block) (name, part string) {
	switch b := b.(type) {
	case Worked:
		return b.Name, "example"
	case Exercise:
		return b.Name, exercisePart
	}
	return "", ""
}

// A named is a block that is solved.
type named struct {
	name   string
	inputs []Input
	solve  func(*Inputs) (Answer, error)
}

func namedBlock(b Block) (named, bool) {
	switch b := b.(type) {
	case Numbers:
		return named{b.Name, nil, b.Solve}, true
	case Worked:
		return named{b.Name, b.Inputs, b.Solve}, true
	case Misconception:
		return named{b.Name, nil, b.Solve}, true
	case Exercise:
		return named{b.Name, b.Inputs, b.Solve}, true
	}
	return named{}, false
}

// run solves n.
func (w *weaver) run(n named, set []Setting) error {
	if !plainName.MatchString(n.name) {
		return fmt.Errorf("name %q, want lower case letters, digits and _", n.name)
	}
	if w.solved[n.name] != nil {
		return errors.New("another block has the same name")
	}
	s, err := solve(n.solve, n.inputs, set)
	if err != nil {
		return err
	}
	if _, err := w.functions.of(n.solve); err != nil {
		return err
	}
	w.solved[n.name] = s
	return nil
}

// blockName returns how errors call the i-th block.
func blockName(b Block, i int) string {
	switch b := b.(type) {
	case nil:
		return fmt.Sprintf("block %d", i+1)
	case Figure:
		return fmt.Sprintf("figure %q", b.Name)
	case Table:
		return fmt.Sprintf("table %q", b.Title)
	default:
		kind := strings.ToLower(strings.TrimPrefix(fmt.Sprintf("%T", b), "weave."))
		if kind == "worked" {
			kind = "worked example"
		}
		if n, ok := namedBlock(b); ok {
			return fmt.Sprintf("%s %q", kind, n.name)
		}
		return fmt.Sprintf("%s, block %d", kind, i+1)
	}
}

// checkUse reports values and functions that nothing prints.
func (w *weaver) checkUse() {
	for i, b := range w.chapter.Blocks {
		n, ok := namedBlock(b)
		if !ok {
			continue
		}
		if names := w.solved[n.name].unused(); len(names) > 0 {
			w.fail(blockName(b, i), fmt.Errorf("nothing prints the value %s", quoted(names)))
		}
	}
	if names := w.functions.unused(); len(names) > 0 {
		w.fail("", fmt.Errorf("no block has the solve function %s", quoted(names)))
	}
}

// fill replaces the placeholders of text, in which the names of own need no
// prefix; own may be nil.
func (w *weaver) fill(text string, own *solved) (string, error) {
	return fill(dedent(text), func(name string) (string, error) {
		block, value, ok := strings.Cut(name, ".")
		if !ok {
			if own == nil {
				return "", fmt.Errorf("placeholder {{%s}}, want {{example.%s}}", name, name)
			}
			return own.look(name)
		}
		s := w.solved[block]
		if s == nil {
			return "", &UnknownError{Kind: "example", Name: block, Known: w.names()}
		}
		return s.look(value)
	})
}

// text fills and checks a text that has no headings.
func (w *weaver) text(name, text string, own *solved) (string, error) {
	filled, err := w.fill(text, own)
	if err == nil {
		err = checkProse(filled, nil)
	}
	if err != nil {
		return "", fmt.Errorf("%s: %w", name, err)
	}
	return filled, nil
}

// names returns the names of the blocks that are solved, in reading order.
func (w *weaver) names() []string {
	var names []string
	for _, b := range w.chapter.Blocks {
		if n, ok := namedBlock(b); ok {
			names = append(names, n.name)
		}
	}
	return names
}
