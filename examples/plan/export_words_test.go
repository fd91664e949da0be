package plan

import "reflect"

// What calculators say and allow, as a plan has it.
var (
	MendInWords    = described
	AllowedInWords = allowedInWords
)

// Limited returns the paths that have limits.
func Limited() map[string]bool {
	paths := map[string]bool{}
	for path := range limits() {
		paths[path] = true
	}
	return paths
}

// Refused returns the mistakes that an error of a calculator becomes which was
// asked about the part at path.
func Refused(path string, err error) []Problem {
	var m maker
	m.ok(path, err)
	return m.problems
}

// Stated returns the paths of what a description states, without the numbers
// of entries.
func Stated(r Rig) (paths []string) {
	for _, f := range fields(r) {
		if !isZero(f.value) {
			paths = append(paths, inLists(f.path))
		}
	}
	return paths
}

// Fields returns the paths of all that a description can state.
func Fields() (paths []string) {
	var below func(path string, t reflect.Type)
	below = func(path string, t reflect.Type) {
		switch {
		case t.Kind() == reflect.Pointer:
			below(path, t.Elem())
		case t.Kind() == reflect.Slice:
			below(path+"[]", t.Elem())
		case t.Kind() == reflect.Struct && !isText(t):
			for i := range t.NumField() {
				below(join(path, fieldName(t.Field(i))), t.Field(i).Type)
			}
		default:
			paths = append(paths, path)
		}
	}
	below("", reflect.TypeFor[Rig]())
	return paths
}
