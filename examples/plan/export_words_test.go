package plan

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
