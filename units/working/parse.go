package working

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/scanner"
	"go/token"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/drawbar/units"
)

// The limits on a formula keep it readable, and keep the recursions over its
// tree shallow.
const (
	maxLength = 1000 // bytes
	maxDepth  = 60   // operators and calls inside each other
	maxName   = 32   // characters
	maxNumber = 20   // digits and point of a number
)

// ParseFormula reads a formula, or a comparison of two. What is allowed:
//
//	numbers          2, 0.5, 1e-3
//	names            letters, digits and _; ρ_20, ΔV, V_load_min
//	+ - * / ( )      and a minus in front
//	< <= > >= == !=  once, between two formulas
//	pow(x, y)  sqrt  exp  ln  log10  sin  cos  tan  asin  acos  atan
//	abs  floor  ceil  min(x, y, …)  max(x, y, …)
//	pi  pct  deg     π, 0.01 and π/180
//
// The angle functions work in radians. Everything else is an error that says
// what to write. Every error has concrete type [*FormulaError] and matches
// [units.ErrSyntax].
func ParseFormula(s string) (Formula, error) {
	f := Formula{text: s}
	if err := f.checkText(); err != nil {
		return Formula{}, err
	}
	tree, err := parser.ParseExpr(s)
	if err != nil {
		return Formula{}, f.syntaxError(err)
	}
	c := converter{f}
	root, failed := c.convert(tree, 0)
	if failed != nil {
		return Formula{}, failed
	}
	f.root = root
	return f, nil
}

// instead says what to write for what people write. The first that is found
// counts, so the longer come first.
var instead = [...]struct{ wrong, reason string }{
	{"**", "** is not a power; write pow(x, y)"},
	{"//", "this begins a comment; write one /"},
	{"/*", "this begins a comment; put a space between / and *"},
	{"<-", "this is not a comparison; put a space between < and -"},
	{"--", "this is not a minus of a minus; put a space between them"},
	{"++", "write one +"},
	{"&&", "write two comparisons"},
	{"||", "write two comparisons"},
	{"...", "write every argument"},
	{"^", "^ is not a power; write pow(x, y)"},
	{"%", "% is not per cent; write x * pct"},
	{"[", "write one name, such as x_1; [ ] is not allowed"},
	{"{", "{ } is not allowed; write numbers, names, + - * / and calls"},
	{";", "write one formula"},
	{":", "write one formula"},
	{"\"", "text is not allowed"},
	{"`", "text is not allowed"},
	{"'", "text is not allowed"},
	{"·", "write * for a product"},
	{"⋅", "write * for a product"},
	{"×", "write * for a product"},
	{"÷", "write / for a quotient"},
	{"−", "write - for a minus"},
	{"–", "write - for a minus"},
	{"²", "write pow(x, 2)"},
	{"³", "write pow(x, 3)"},
	{"√", "write sqrt(x)"},
	{"°", "write x * deg for an angle"},
	{"≤", "write <="},
	{"≥", "write >="},
	{"≠", "write !="},
	{"π", "write pi"},
}

// checkText looks for what Go would read as something else, or not at all.
func (f Formula) checkText() error {
	if len(f.text) > maxLength {
		return f.fail(maxLength, units.ErrSyntax, "longer than "+strconv.Itoa(maxLength)+" bytes; write more steps")
	}
	if strings.TrimSpace(f.text) == "" {
		return f.fail(0, units.ErrSyntax, "empty; write a formula")
	}
	if !utf8.ValidString(f.text) {
		return f.fail(0, units.ErrSyntax, "not UTF-8 text")
	}
	for i, r := range f.text {
		if r < utf8.RuneSelf && (unicode.IsLetter(r) || unicode.IsDigit(r)) {
			continue
		}
		for _, w := range instead {
			if strings.HasPrefix(f.text[i:], w.wrong) {
				return f.fail(i, units.ErrSyntax, w.reason)
			}
		}
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune(" _+-*/().,<>=!", r) {
			return f.fail(i, units.ErrSyntax, strconv.QuoteRune(r)+" is not allowed; write numbers, names, + - * / and calls")
		}
	}
	return nil
}

// syntaxError returns the error of Go's parser as one of ours.
func (f Formula) syntaxError(err error) error {
	at, reason := 0, err.Error()
	if list := (scanner.ErrorList)(nil); errors.As(err, &list) && len(list) > 0 {
		at, reason = list[0].Pos.Offset, list[0].Msg
	}
	at = min(max(at, 0), len(f.text))
	switch rest := f.text[at:]; {
	case strings.HasPrefix(rest, ","):
		reason = "a comma only parts arguments; write 1.5 for one and a half"
	case strings.HasPrefix(rest, "=") && !strings.HasPrefix(rest, "=="):
		reason = "write only what stands behind the =, or == in a comparison"
	case strings.Contains(reason, "octal"):
		reason = "a number may not begin with 0"
	case rest == "":
		reason = "the formula ends here; " + reason
	}
	return f.fail(at, units.ErrSyntax, reason)
}

// A converter turns the tree of Go's parser into one of ours.
type converter struct{ f Formula }

// fail reports what is wrong at a node.
func (c converter) fail(n ast.Node, reason string) (expr, *FormulaError) {
	return nil, c.f.fail(offset(n.Pos()), units.ErrSyntax, reason)
}

// offset returns the offset of p; a formula parsed alone begins at 1.
func offset(p token.Pos) int { return max(int(p)-1, 0) }

func (c converter) convert(n ast.Expr, depth int) (expr, *FormulaError) {
	if depth > maxDepth {
		return c.fail(n, "more than "+strconv.Itoa(maxDepth)+" operators inside each other; write more steps")
	}
	switch n := n.(type) {
	case *ast.ParenExpr:
		return c.convert(n.X, depth+1)
	case *ast.BasicLit:
		return c.number(n)
	case *ast.Ident:
		return c.ident(n)
	case *ast.UnaryExpr:
		return c.unary(n, depth)
	case *ast.BinaryExpr:
		return c.binary(n, depth)
	case *ast.CallExpr:
		return c.call(n, depth)
	case *ast.SelectorExpr:
		return c.fail(n.Sel, "write one name, with _ before the subscript; a point is not allowed in it")
	case *ast.StarExpr:
		return c.fail(n, "a * needs something on both sides")
	}
	return c.fail(n, "not allowed; write numbers, names, + - * / and calls")
}

func (c converter) number(n *ast.BasicLit) (expr, *FormulaError) {
	if reason := reasonAgainst(n.Value); reason != "" {
		return c.fail(n, reason)
	}
	x, err := strconv.ParseFloat(n.Value, 64)
	if err != nil {
		return c.fail(n, "too large for a number")
	}
	text := n.Value
	if text[0] == '.' {
		text = "0" + text
	}
	return number{text, x}, nil
}

// reasonAgainst says why s is not a plain decimal number; it is empty if s
// is one.
func reasonAgainst(s string) string {
	whole := 0 // digits before the point
	for whole < len(s) && '0' <= s[whole] && s[whole] <= '9' {
		whole++
	}
	mantissa, exponent, hasExponent := strings.Cut(s, "e")
	_, fraction, hasPoint := strings.Cut(mantissa, ".")
	switch {
	case strings.Trim(mantissa, "0123456789.") != "" || strings.Trim(exponent, "0123456789+-") != "":
		return "write a decimal number, such as 1200 or 1.2e3"
	case hasPoint && fraction == "":
		return "a digit is missing behind the point"
	case hasExponent && exponent == "", mantissa == "":
		return "write a decimal number, such as 1200 or 1.2e3"
	case whole > 1 && s[0] == '0':
		return "a number may not begin with 0; write " + strings.TrimLeft(s[:whole-1], "0") + s[whole-1:]
	case len(s) > maxNumber:
		return "more than " + strconv.Itoa(maxNumber) + " characters in a number"
	}
	return ""
}

func (c converter) ident(n *ast.Ident) (expr, *FormulaError) {
	for k, s := range constantNames {
		if s == n.Name {
			return constant(k), nil
		}
	}
	if fn, ok := functionNamed(n.Name); ok {
		return c.fail(n, n.Name+" is a function; write "+fn.usage())
	}
	if reason := reasonAgainstName(n.Name); reason != "" {
		return c.fail(n, reason)
	}
	return name{n.Name, offset(n.Pos())}, nil
}

func (c converter) unary(n *ast.UnaryExpr, depth int) (expr, *FormulaError) {
	switch n.Op {
	case token.SUB:
		x, err := c.operand(n.X, depth)
		return negation{x}, err
	case token.ADD:
		return c.fail(n, "a + needs something on both sides")
	default: // !, the only other that gets through checkText
		return c.fail(n, "write the opposite comparison")
	}
}

func (c converter) binary(n *ast.BinaryExpr, depth int) (expr, *FormulaError) {
	op, ok := operatorOf(n.Op)
	if !ok {
		return nil, c.f.fail(offset(n.OpPos), units.ErrSyntax, n.Op.String()+" is not allowed; write + - * / or a comparison")
	}
	if op.isComparison() && depth > 0 {
		return nil, c.f.fail(offset(n.OpPos), units.ErrSyntax, "a comparison inside another formula; write it as a step of its own")
	}
	x, err := c.operand(n.X, depth)
	if err != nil {
		return nil, err
	}
	y, err := c.operand(n.Y, depth)
	if err != nil {
		return nil, err
	}
	return binary{op, offset(n.OpPos), x, y}, nil
}

// operand converts a part of n one level deeper.
func (c converter) operand(n ast.Expr, depth int) (expr, *FormulaError) {
	return c.convert(n, depth+1)
}

func operatorOf(t token.Token) (operator, bool) {
	for op, s := range operatorNames {
		if s == t.String() {
			return operator(op), true
		}
	}
	return 0, false
}

func (c converter) call(n *ast.CallExpr, depth int) (expr, *FormulaError) {
	id, ok := n.Fun.(*ast.Ident)
	if !ok {
		return c.fail(n, "write * for a product")
	}
	fn, ok := functionNamed(id.Name)
	if !ok {
		return c.fail(n, id.Name+" is not a function; write * for a product, or one of "+functionList())
	}
	want := functions[fn].args
	if got := len(n.Args); got != want && !(want == many && got >= 2) {
		return c.fail(n, "write "+fn.usage())
	}
	args := make([]expr, len(n.Args))
	for i, a := range n.Args {
		x, err := c.operand(a, depth)
		if err != nil {
			return nil, err
		}
		args[i] = x
	}
	return call{fn, offset(n.Pos()), args}, nil
}

// usage returns how f is called.
func (f function) usage() string {
	switch functions[f].args {
	case 1:
		return f.String() + "(x)"
	case many:
		return f.String() + "(x, y, …)"
	}
	return f.String() + "(x, y)"
}

func functionList() string {
	var names []string
	for _, f := range functions {
		names = append(names, f.name)
	}
	return strings.Join(names, " ")
}
