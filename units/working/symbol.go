package working

import (
	"go/token"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// reasonAgainstName says why s cannot name a quantity; it is empty if s can.
func reasonAgainstName(s string) string {
	if s == "" {
		return "a name is missing"
	}
	if utf8.RuneCountInString(s) > maxName {
		return "a name of more than " + strconv.Itoa(maxName) + " characters"
	}
	for i, r := range s {
		switch {
		case !unicode.IsLetter(r) && i == 0:
			return "a name begins with a letter"
		case !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '_':
			return strconv.QuoteRune(r) + " is not allowed in a name; write letters, digits and _"
		}
	}
	if strings.HasSuffix(s, "_") || strings.Contains(s, "__") {
		return "a subscript is missing behind _"
	}
	_, isFunction := functionNamed(s)
	switch {
	case isFunction || s == "pi" || s == "pct" || s == "deg" || strings.Contains(s, "π"):
		return s + " has a meaning in formulas; choose another name"
	case token.IsKeyword(s):
		return s + " is a word of Go; choose another name"
	}
	return ""
}

// splitName returns the symbol, which is what stands before the first _, and
// its subscript, where a further _ is a comma.
func splitName(s string) (symbol, subscript string) {
	symbol, subscript, _ = strings.Cut(s, "_")
	return symbol, strings.ReplaceAll(subscript, "_", ",")
}

// splitChange cuts a Δ or δ in front of a symbol off, as it is set upright
// and the symbol behind it is not.
func splitChange(symbol string) (change, of string) {
	for _, d := range [...]string{"Δ", "δ"} {
		if of, ok := strings.CutPrefix(symbol, d); ok && of != "" {
			return d, of
		}
	}
	return "", symbol
}

// isSingle reports whether s is one character.
func isSingle(s string) bool { return utf8.RuneCountInString(s) == 1 }

// greek returns the LaTeX command for a Greek letter, empty for any other
// character. Capitals that look Latin have none and are set as they are.
func greek(r rune) string {
	const lower = "α=alpha β=beta γ=gamma δ=delta ε=varepsilon ζ=zeta η=eta θ=theta ι=iota κ=kappa λ=lambda μ=mu " +
		"\u00b5=mu ν=nu ξ=xi π=pi ρ=rho ς=varsigma σ=sigma τ=tau υ=upsilon φ=varphi χ=chi ψ=psi ω=omega " +
		"ϑ=vartheta ϕ=phi ϵ=epsilon "
	const upper = "Γ=Gamma Δ=Delta Θ=Theta Λ=Lambda Ξ=Xi Π=Pi Σ=Sigma Υ=Upsilon Φ=Phi Ψ=Psi Ω=Omega \u2126=Omega "
	_, after, ok := strings.Cut(lower+upper, string(r)+"=")
	if !ok {
		return ""
	}
	command, _, _ := strings.Cut(after, " ")
	return `\` + command
}
