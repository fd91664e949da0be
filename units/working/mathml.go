package working

import (
	"html"
	"strings"
)

const (
	mathOpen  = `<math display="block">`
	mathClose = `</math>`
)

// A mathSetter writes a formula as MathML Core.
type mathSetter struct{ strings.Builder }

func mathMLOf(e expr) string {
	var s mathSetter
	typeset(&s, e)
	return "<mrow>" + s.String() + "</mrow>"
}

// put appends the strings, which are markup.
func (s *mathSetter) put(parts ...string) {
	for _, p := range parts {
		s.WriteString(p)
	}
}

// element appends an element with text in it.
func (s *mathSetter) element(tag, text string) {
	s.put("<", tag, ">", html.EscapeString(text), "</", tag, ">")
}

// row appends an element with a row in it.
func (s *mathSetter) row(inside func()) {
	s.put("<mrow>")
	inside()
	s.put("</mrow>")
}

func (s *mathSetter) number(text string) {
	mantissa, exponent, ok := cutExponent(text)
	if !ok {
		s.element("mn", mantissa)
		return
	}
	digits, negative := strings.CutPrefix(exponent, "-")
	s.row(func() {
		s.element("mn", mantissa)
		s.element("mo", "×")
		s.put("<msup><mn>10</mn>")
		s.row(func() {
			if negative {
				s.minus()
			}
			s.element("mn", digits)
		})
		s.put("</msup>")
	})
}

const noBreak = "\u00a0" // between a number and its unit

func (s *mathSetter) scale(sign constant) {
	if sign == deg {
		s.element("mtext", "°")
		return
	}
	s.element("mtext", noBreak+"%")
}

func (s *mathSetter) pi() { s.element("mi", "π") }

func (s *mathSetter) symbol(name string) {
	symbol, subscript := splitName(name)
	if subscript == "" {
		s.letters(symbol)
		return
	}
	s.put("<msub>")
	s.letters(symbol)
	if strings.Trim(subscript, "0123456789") == "" {
		s.element("mn", subscript)
	} else {
		s.element("mtext", subscript)
	}
	s.put("</msub>")
}

// letters appends a symbol without its subscript. An mi of one letter is
// slanted, one of several is upright.
func (s *mathSetter) letters(symbol string) {
	change, symbol := splitChange(symbol)
	if change == "" {
		s.element("mi", symbol)
		return
	}
	s.row(func() {
		s.put(`<mi mathvariant="normal">`, change, "</mi>")
		s.element("mi", symbol)
	})
}

var mathOperators = [...]string{add: "+", sub: "−", mul: "⋅", div: "/", less: "<",
	lessEqual: "≤", greater: ">", greaterEqual: "≥", equal: "=", notEqual: "≠"}

func (s *mathSetter) operator(o operator) { s.element("mo", mathOperators[o]) }

func (s *mathSetter) minus() { s.put(`<mo form="prefix">−</mo>`) }

// function appends the name; U+2061 tells a screen reader that what follows
// is its argument.
func (s *mathSetter) function(f function) {
	if f == log10 {
		s.put("<msub><mi>log</mi><mn>10</mn></msub>")
	} else {
		s.element("mi", strings.TrimPrefix(functions[f].latex, `\`))
	}
	s.put("<mo>\u2061</mo>")
}

func (s *mathSetter) comma() { s.element("mo", ",") }

var mathFences = [...][2]string{round: {"(", ")"}, absolute: {"|", "|"}, lower: {"⌊", "⌋"}, upper: {"⌈", "⌉"}}

func (s *mathSetter) fence(f fence, inside func()) {
	s.row(func() {
		s.put(`<mo form="prefix" fence="true">`, mathFences[f][0], "</mo>")
		s.row(inside)
		s.put(`<mo form="postfix" fence="true">`, mathFences[f][1], "</mo>")
	})
}

func (s *mathSetter) fraction(x, y func()) { s.pair("mfrac", x, y) }

func (s *mathSetter) power(x, y func()) { s.pair("msup", x, y) }

func (s *mathSetter) pair(tag string, x, y func()) {
	s.put("<", tag, ">")
	s.row(x)
	s.row(y)
	s.put("</", tag, ">")
}

func (s *mathSetter) root(x func()) {
	s.put("<msqrt>")
	x()
	s.put("</msqrt>")
}

// mathUnit returns the unit behind a number; nothing for a plain number.
func mathUnit(unit string) string {
	var s mathSetter
	switch unit {
	case "1", "":
	case "°", "′", "″":
		s.element("mtext", unit)
	default:
		s.element("mtext", noBreak+unit)
	}
	return s.String()
}
