package weave

import (
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path"
	"reflect"
	"runtime"
	"slices"
	"strings"
)

// widestCode is how many columns a printed line of code may have, so that it
// fits a page; a tab counts for tabWidth.
const (
	widestCode = 68
	tabWidth   = 4
)

// A function is one that the chapter declares.
type function struct {
	file        string // its base name
	first, last int    // lines of the declaration
	text        string // with its comment
	solves      bool   // has the signature of a solve function
	used        bool   // by a block
}

// functions are those of a chapter by name, methods left out.
type functions map[string]*function

// readFunctions returns the functions of all Go files of source.
func readFunctions(source fs.FS) (functions, error) {
	if source == nil {
		return nil, errors.New("no Source; embed the Go files of the chapter")
	}
	files, err := fs.Glob(source, "*.go")
	if err != nil {
		return nil, err
	}
	all := functions{}
	for _, name := range files {
		if err := all.read(source, name); err != nil {
			return nil, err
		}
	}
	if len(all) == 0 {
		return nil, errors.New("the Source declares no function")
	}
	return all, nil
}

func (all functions) read(source fs.FS, name string) error {
	text, err := fs.ReadFile(source, name)
	if err != nil {
		return err
	}
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, name, text, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil {
		return err
	}
	for _, d := range file.Decls {
		f, ok := d.(*ast.FuncDecl)
		if !ok || f.Recv != nil {
			continue
		}
		from := f.Pos()
		if f.Doc != nil {
			from = f.Doc.Pos()
		}
		all[f.Name.Name] = &function{
			file:  path.Base(name),
			first: set.Position(f.Pos()).Line, last: set.Position(f.End()).Line,
			text:   string(text[set.Position(from).Offset:set.Position(f.End()).Offset]),
			solves: isSolve(f.Type),
		}
	}
	return nil
}

// isSolve reports whether a function of type t can be a solve function.
func isSolve(t *ast.FuncType) bool {
	const results = 2
	if t.Params.NumFields() != 1 || t.Results.NumFields() != results {
		return false
	}
	star, ok := t.Params.List[0].Type.(*ast.StarExpr)
	return ok && isSelected(star.X, "Inputs") && isSelected(t.Results.List[0].Type, "Answer")
}

// isSelected reports whether e is name of some package.
func isSelected(e ast.Expr, name string) bool {
	s, ok := e.(*ast.SelectorExpr)
	return ok && s.Sel.Name == name
}

// unused returns the names of solve functions that no block has.
func (all functions) unused() []string {
	var names []string
	for name, f := range all {
		if f.solves && !f.used {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// of returns the declaration of the very function that f is.
func (all functions) of(f func(*Inputs) (Answer, error)) (*function, error) {
	// The last of the frames at the entry is the function itself; those
	// before it are inlined into its first instruction.
	frames := runtime.CallersFrames([]uintptr{reflect.ValueOf(f).Pointer() + 1})
	var frame runtime.Frame
	for more := true; more; {
		frame, more = frames.Next()
	}
	name := frame.Function
	name = name[strings.LastIndexByte(name, '/')+1:]
	_, name, _ = strings.Cut(name, ".") // without the package
	decl := all[name]
	if decl == nil {
		return nil, fmt.Errorf("the solve function is %s, which the chapter does not declare; want a function, no closure or method", name)
	}
	// The path as compiled may have backslashes.
	file := path.Base(strings.ReplaceAll(frame.File, `\`, "/"))
	if file != decl.file || frame.Line < decl.first || frame.Line > decl.last {
		return nil, fmt.Errorf("the solve function is at %s:%d, but the Source has %s at %s:%d",
			file, frame.Line, name, decl.file, decl.first)
	}
	decl.used = true
	return decl, nil
}

// printed returns the text of f with tabs expanded, or an error for a line
// that is too wide.
func (f *function) printed() (string, error) {
	text := expandTabs(f.text)
	return text, checkCode(text)
}

// names returns the names of all functions, sorted.
func (all functions) names() []string {
	return slices.Sorted(maps.Keys(all))
}
