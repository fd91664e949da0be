package house_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"
)

// arrows is the policy of imports: for folders, what their packages may import
// besides the standard library. "..." after a slash stands for anything below,
// "any" for everything of ours but unitstest. The first line that has a folder
// holds for it. Tests may import what the line "tests" says, too, with "self"
// for the package that they test.
//
// Do not change this text to make a build work: an import that it refuses is
// a decision about the design.
const arrows = `
units:                             github.com/shopspring/decimal golang.org/x/exp/...
units/working:                     units golang.org/x/exp/...
units/unitstest:                   units units/working github.com/google/go-cmp/...
units/unitstest/house:
loads battery wire solar inverter: units units/working golang.org/x/exp/...
examples/plan:                     units units/working loads battery wire solar inverter golang.org/x/exp/...
examples/...:                      any golang.org/x/exp/...
book book/...:                     any golang.org/x/exp/... github.com/yuin/goldmark/...
tests:                             self units units/unitstest github.com/google/go-cmp/...
`

// imports finds imports that the policy does not have.
func imports(t *tree) (broken []string) {
	forTests, _ := allowed("tests")
	for _, f := range t.sorted() {
		list, ok := allowed(f.path)
		if !ok {
			broken = append(broken, f.path+": the policy of imports has no line for this folder")
			continue
		}
		for _, file := range slices.Concat(f.files, f.tests()) {
			may := list
			if t.isTest(file.Pos()) {
				may = slices.Concat(list, forTests)
			}
			for _, spec := range file.Imports {
				imported, _ := strconv.Unquote(spec.Path.Value) // the parser has read it
				dir, isOurs := t.inside(imported)
				switch {
				case isOurs:
					imported = dir
				case isStandard(imported):
					continue
				}
				if !mayImport(f.path, may, imported, isOurs) {
					broken = append(broken, t.at(spec.Pos(), "%s may not import %s", f.path, imported))
				}
			}
		}
	}
	return broken
}

// isStandard reports whether an import path that is not ours is of the
// standard library: no other begins without a dot.
func isStandard(imported string) bool {
	first, _, _ := strings.Cut(imported, "/")
	return !strings.Contains(first, ".")
}

// allowed returns what the policy lets a folder import; not ok if the policy
// does not know the folder.
func allowed(folder string) (list []string, ok bool) {
	for line := range strings.Lines(strings.TrimSpace(arrows)) {
		folders, list, _ := strings.Cut(line, ":")
		if slices.ContainsFunc(strings.Fields(folders), func(p string) bool { return below(p, folder) }) {
			return strings.Fields(list), true
		}
	}
	return nil, false
}

// below reports whether name is what the pattern is, or has below.
func below(pattern, name string) bool {
	parent, open := strings.CutSuffix(pattern, "/...")
	return name == pattern || open && (name == parent || strings.HasPrefix(name, parent+"/"))
}

// mayImport reports whether the list lets folder import imported, which is a
// folder if it is ours.
func mayImport(folder string, list []string, imported string, isOurs bool) bool {
	return slices.ContainsFunc(list, func(p string) bool {
		switch p {
		case "any":
			return isOurs && !below("units/unitstest/...", imported)
		case "self":
			return imported == folder
		}
		return below(p, imported)
	})
}

func TestImports(t *testing.T) { hold(t, imports) }

func TestImportsSeeds(t *testing.T) {
	// file returns a file with the imports, for side effects.
	file := func(name, pkg string, paths ...string) string {
		text := "-- " + name + " --\npackage " + pkg + "\n"
		for _, p := range paths {
			text += "import _ " + strconv.Quote(p) + "\n"
		}
		return text
	}
	const (
		our  = "example.com/drawbar/"
		dec  = "github.com/shopspring/decimal"
		cmp  = "github.com/google/go-cmp/cmp"
		exp  = "golang.org/x/exp/constraints"
		mark = "github.com/yuin/goldmark"
	)
	prove(t, imports, []seed{
		// As it should be.
		{"units", file("units/a.go", "units", "math/big", dec, exp), nil},
		{"working", file("units/working/a.go", "working", our+"units"), nil},
		{"calculator", file("solar/a.go", "solar", our+"units", our+"units/working", exp), nil},
		{"tests", file("solar/a_test.go", "solar_test", our+"solar", our+"units/unitstest", cmp), nil},
		{"plan", file("examples/plan/a.go", "plan", our+"wire", our+"units/working"), nil},
		{"program", file("examples/fridge/a.go", "main", our+"examples/plan", our+"wire"), nil},
		{"chapter", file("book/drop/a.go", "drop", our+"wire", our+"book/weave", our+"examples/plan"), nil},
		{"prose", file("book/weave/a.go", "weave", mark, mark+"/ast"), nil},
		{"helpers", file("units/unitstest/a.go", "unitstest", our+"units/working", cmp), nil},
		// Arrows the other way.
		{"units on working", file("units/a.go", "units", our+"units/working"), []string{"units/a.go:2: units may not import units/working"}},
		{"units on a calculator", file("units/a.go", "units", our+"wire"), []string{"units may not import wire"}},
		{"working on a calculator", file("units/working/a.go", "working", our+"wire"), []string{"units/working may not import wire"}},
		{"calculators", file("solar/a.go", "solar", our+"battery"), []string{"solar may not import battery"}},
		{"calculators, in a test", file("solar/a_test.go", "solar_test", our+"battery"), []string{"solar may not import battery"}},
		{"calculator on plan", file("solar/a.go", "solar", our+"examples/plan"), []string{"solar may not import examples/plan"}},
		{"calculator on the book", file("solar/a.go", "solar", our+"book/figure"), []string{"solar may not import book/figure"}},
		{"plan on a program", file("examples/plan/a.go", "plan", our+"examples/fridge"), []string{"examples/plan may not import examples/fridge"}},
		{"unknown folder", file("tools/a.go", "tools"), []string{"tools: the policy of imports has no line"}},
		{"root", file("a.go", "drawbar"), []string{".: the policy of imports has no line"}},
		{"folder below a calculator", file("wire/tables/a.go", "tables"), []string{"wire/tables: the policy"}},
		// Test helpers outside of tests.
		{"unitstest in a calculator", file("wire/a.go", "wire", our+"units/unitstest"), []string{"wire may not import units/unitstest"}},
		{"unitstest in a chapter", file("book/drop/a.go", "drop", our+"units/unitstest"), []string{"may not import units/unitstest"}},
		{"unitstest in a program", file("examples/fridge/a.go", "main", our+"units/unitstest"), []string{"may not import units/unitstest"}},
		{"cmp in a calculator", file("wire/a.go", "wire", cmp), []string{"wire may not import github.com/google/go-cmp/cmp"}},
		// Third parties.
		{"decimal in a calculator", file("wire/a.go", "wire", dec), []string{"wire may not import " + dec}},
		{"decimal in a test", file("wire/a_test.go", "wire_test", dec), []string{"wire may not import " + dec}},
		{"goldmark in a calculator", file("wire/a.go", "wire", mark), []string{"wire may not import " + mark}},
		{"goldmark in a program", file("examples/fridge/a.go", "main", mark), []string{"may not import " + mark}},
		{"decimal in the book", file("book/drop/a.go", "drop", dec), []string{"book/drop may not import " + dec}},
		{"another module", file("wire/a.go", "wire", "golang.org/x/text/width"), []string{"wire may not import golang.org/x/text/width"}},
		{"a module of a like name", file("book/drop/a.go", "drop", "example.com/drawbarrier/x"), []string{"may not import example.com/drawbarrier/x"}},
	})
}
