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
