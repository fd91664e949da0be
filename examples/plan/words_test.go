package plan_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/drawbar/examples/plan"
)

// exportedNames returns the names of a package's fields, functions, types and
// constants, as recorded.
func exportedNames(t *testing.T, folder string) map[string]bool {
	t.Helper()
	data, err := os.ReadFile("../../testdata/api/" + folder + ".txt")
	if err != nil {
		t.Fatal(err)
	}
	names := map[string]bool{}
	for _, word := range regexp.MustCompile(`[A-Z]\w+`).FindAllString(string(data), -1) {
		names[word] = true
	}
	return names
}

// aName is a word that begins with a capital and goes on in small letters.
var aName = regexp.MustCompile(`\b[A-Z][a-z]\w*`)

// namesLeft returns the exported names in a text that are no words of English
// there: those with a capital inside, and those within a sentence.
func namesLeft(text string, names map[string]bool) (left []string) {
	for _, at := range aName.FindAllStringIndex(text, -1) {
		word, before := text[at[0]:at[1]], strings.TrimRight(text[:at[0]], " ")
		begins := before == "" || strings.HasSuffix(before, ".") || strings.HasSuffix(before, ":")
		humps := strings.ToLower(word[1:]) != word[1:]
		if names[word] && (humps || !begins) {
			left = append(left, word)
		}
	}
	return left
}

// textsOf calls visit with each string literal of a file that is told to a
// reader: "message", "mend" or "allowed".
func textsOf(t *testing.T, file string, visit func(kind, text string)) {
	t.Helper()
	parsed, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	literals := func(kind string, in ast.Expr) {
		ast.Inspect(in, func(n ast.Node) bool {
			if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
				text, err := strconv.Unquote(lit.Value)
				if err != nil {
					t.Fatal(err)
				}
				visit(kind, text)
			}
			return true
		})
	}
	kinds := map[string]string{"Message": "message", "Fix": "mend", "wording": "allowed", "allowed": "allowed"}
	ast.Inspect(parsed, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.KeyValueExpr:
			if key, ok := n.Key.(*ast.Ident); ok && kinds[key.Name] != "" {
				literals(kinds[key.Name], n.Value)
			}
		case *ast.AssignStmt:
			for i, left := range n.Lhs {
				if sel, ok := left.(*ast.SelectorExpr); ok && kinds[sel.Sel.Name] != "" {
					literals(kinds[sel.Sel.Name], n.Rhs[min(i, len(n.Rhs)-1)])
				}
			}
		case *ast.CallExpr:
			if f, ok := n.Fun.(*ast.Ident); ok && kinds[f.Name] != "" {
				for _, arg := range n.Args {
					literals(kinds[f.Name], arg)
				}
			}
		}
		return true
	})
}

// TestNoNameOfGoIsTold reads every message, mend and range of the calculators:
// in a plan none has the name of a field or function.
func TestNoNameOfGoIsTold(t *testing.T) {
	// Why a range cannot be told: it is that of what a plan never gives wrong.
	excused := map[string]string{
		"exactly one of Power, Current and Resistance given":                            "a plan gives a draw its power",
		"at least one of Power, Apparent and Current given":                             "a plan gives a limit its power or current",
		"another place than From":                                                       "a plan feeds buses from the bank, and the bank from buses",
		"not given where Apparent is":                                                   "a plan gives a demand no power factor",
		"one for each of Loads":                                                         "a plan takes a ledger as audited",
		"CellsNotStated, CrystallineSilicon or ThinFilm":                                "a plan takes panels for silicon",
		"given, since NEC Table 9 has 14 AWG to 500 kcmil of copper and aluminium only": "a plan does not ask for reactance",
		"SplitPhase, NetworkLegs or OneHot":                                             "a plan has one leg",
		"not given beside Power":                                                        "a plan does not warm a conductor by its load",
		"above Base, at most 150 °C":                                                    "a plan does not warm a conductor by its load",
	}
	told := map[string]int{}
	for _, folder := range []string{"battery", "inverter", "loads", "solar", "wire"} {
		names := exportedNames(t, folder)
		files, err := filepath.Glob("../../" + folder + "/*.go")
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range files {
			if strings.HasSuffix(file, "_test.go") {
				continue
			}
			textsOf(t, file, func(kind, text string) {
				told[kind]++
				shown := text
				switch kind {
				case "mend":
					shown = plan.MendInWords(text)
				case "allowed":
					shown = plan.AllowedInWords(text)
				}
				if left := namesLeft(shown, names); len(left) > 0 && excused[text] == "" {
					t.Errorf("%s, %s: %q has %v", filepath.Base(file), kind, shown, left)
				}
			})
		}
	}
	for kind, least := range map[string]int{"message": 100, "mend": 100, "allowed": 30} {
		if told[kind] < least {
			t.Errorf("only %d of %s", told[kind], kind)
		}
	}
}
