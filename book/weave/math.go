package weave

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.com/drawbar/units/working"
)

// A mathBlock is a [Formula] that has been read.
type mathBlock struct {
	equations []working.Formula
	where     []whereLine
}

// A whereLine is a [Symbol] that has been read.
type whereLine struct {
	symbol working.Formula
	text   string // what it is, and its unit
}

// newMath returns f, or an error for a symbol that the list lacks or that the
// equations lack.
func newMath(f Formula) (mathBlock, error) {
	var m mathBlock
	if len(f.Equations) == 0 {
		return m, errors.New("no equation")
	}
	var names []string
	for _, e := range f.Equations {
		read, err := readEquation(e)
		if err != nil {
			return m, err
		}
		m.equations = append(m.equations, read)
		names = append(names, read.Names()...)
	}
	var listed []string
	for _, s := range f.Where {
		line, err := newWhere(s)
		switch {
		case err != nil:
			return m, err
		case slices.Contains(listed, s.Name):
			return m, fmt.Errorf("symbol %q is explained twice", s.Name)
		case !slices.Contains(names, s.Name):
			return m, fmt.Errorf("symbol %q is explained but not used", s.Name)
		}
		m.where = append(m.where, line)
		listed = append(listed, s.Name)
	}
	for _, name := range names {
		if !slices.Contains(listed, name) {
			return m, fmt.Errorf("symbol %q is not explained", name)
		}
	}
	return m, nil
}

func newWhere(s Symbol) (whereLine, error) {
	symbol, err := working.ParseFormula(s.Name)
	if err != nil {
		return whereLine{}, fmt.Errorf("symbol %q: %w", s.Name, err)
	}
	if strings.TrimSpace(s.What) == "" {
		return whereLine{}, fmt.Errorf("symbol %q is not explained", s.Name)
	}
	text := s.What
	if s.Unit != "" {
		text += ", in " + s.Unit
	}
	return whereLine{symbol: symbol, text: text}, nil
}

// readEquation reads "symbol = expression" or a comparison. The formula
// language writes the sign of equality ==, as Go does, and shows it as =.
func readEquation(s string) (working.Formula, error) {
	left, right, ok := strings.Cut(s, "=")
	if ok && !strings.HasPrefix(right, "=") && strings.TrimRight(left, "<>!") == left {
		s = left + "==" + right
	}
	f, err := working.ParseFormula(s)
	switch {
	case err != nil:
	case !f.IsComparison():
		err = fmt.Errorf("equation %q has no =, < or >", s)
	case columns(f.Text()) > widestCode:
		err = fmt.Errorf("equation %q takes more than %d columns; name a part of it", s, widestCode)
	}
	return f, err
}
