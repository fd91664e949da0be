package working

import "strings"

// A latexSetter writes a formula as LaTeX mathematics.
type latexSetter struct{ strings.Builder }

func latexOf(e expr) string {
	var s latexSetter
	typeset(&s, e)
	return s.String()
}

// put appends the strings.
func (s *latexSetter) put(parts ...string) {
	for _, p := range parts {
		s.WriteString(p)
	}
}

func (s *latexSetter) number(text string) {
	mantissa, exponent, ok := cutExponent(text)
	s.put(mantissa)
	if ok {
		s.put(` \times 10^{`, exponent, `}`)
	}
}

// cutExponent splits 1.2e-05 into 1.2 and -5.
func cutExponent(text string) (mantissa, exponent string, ok bool) {
	mantissa, exponent, ok = strings.Cut(text, "e")
	minus := ""
	if strings.HasPrefix(exponent, "-") {
		minus = "-"
	}
	digits := strings.TrimLeft(exponent, "+-0")
	if digits == "" {
		return mantissa, "0", ok
	}
	return mantissa, minus + digits, ok
}

func (s *latexSetter) scale(sign constant) {
	if sign == deg {
		s.put(`^{\circ}`)
		return
	}
	s.put(`\,\%`)
}

func (s *latexSetter) pi() { s.put(`\pi`) }

func (s *latexSetter) symbol(name string) { s.put(latexSymbol(name)) }

var latexOperators = [...]string{add: " + ", sub: " - ", mul: ` \cdot `, div: " / ", less: " < ",
	lessEqual: ` \le `, greater: " > ", greaterEqual: ` \ge `, equal: " = ", notEqual: ` \ne `}

func (s *latexSetter) operator(o operator) { s.put(latexOperators[o]) }

func (s *latexSetter) minus() { s.put("-") }

func (s *latexSetter) function(f function) { s.put(functions[f].latex) }

func (s *latexSetter) comma() { s.put(", ") }

var latexFences = [...][2]string{round: {"(", ")"}, absolute: {"|", "|"},
	lower: {`\lfloor `, `\rfloor `}, upper: {`\lceil `, `\rceil `}}

func (s *latexSetter) fence(f fence, inside func()) {
	s.put(`\left`, latexFences[f][0])
	inside()
	s.put(`\right`, latexFences[f][1])
}

func (s *latexSetter) fraction(x, y func()) {
	s.put(`\frac{`)
	x()
	s.put(`}{`)
	y()
	s.put(`}`)
}

func (s *latexSetter) power(x, y func()) {
	s.put(`{`)
	x()
	s.put(`}^{`)
	y()
	s.put(`}`)
}

func (s *latexSetter) root(x func()) {
	s.put(`\sqrt{`)
	x()
	s.put(`}`)
}

// latexSymbol returns a name: one letter slanted, several upright, the
// subscript upright.
func latexSymbol(name string) string {
	symbol, subscript := splitName(name)
	change, symbol := splitChange(symbol)
	s := latexLetters(symbol)
	if !isSingle(symbol) {
		s = `\mathrm{` + s + `}`
	}
	if change != "" {
		s = latexLetters(change) + " " + s
	}
	switch {
	case subscript == "":
		return s
	case strings.Trim(subscript, "0123456789") == "":
		return s + "_{" + subscript + "}"
	}
	return s + `_{\mathrm{` + latexLetters(subscript) + `}}`
}

// latexLetters returns s with commands for what LaTeX does not take as it is.
func latexLetters(s string) string {
	var b strings.Builder
	word := false // a letter behind would belong to the command
	for _, r := range s {
		c := greek(r)
		if c == "" {
			c = latexCharacter(r)
		}
		if word && !strings.HasPrefix(c, `\`) {
			b.WriteByte(' ')
		}
		b.WriteString(c)
		word = len(c) > 2 && c[0] == '\\'
	}
	return b.String()
}

// latexCharacter returns the characters of units, and any other as it is.
func latexCharacter(r rune) string {
	switch r {
	case '·':
		return `\cdot`
	case '°':
		return `{}^{\circ}`
	case '²':
		return "^{2}"
	case '³':
		return "^{3}"
	case '′':
		return `{}^{\prime}`
	case '″':
		return `{}^{\prime\prime}`
	case '\\':
		return `\backslash`
	case '%', '#', '&', '$', '{', '}', '_':
		return `\` + string(r)
	case ' ':
		return `\ `
	}
	return string(r)
}

// latexUnit returns the unit with the space in front of it; nothing for a
// plain number.
func latexUnit(unit string) string {
	switch unit {
	case "1", "":
		return ""
	case "°", "′", "″":
		return latexLetters(unit)
	}
	return `\,\mathrm{` + latexLetters(unit) + `}`
}
