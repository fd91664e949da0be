package weave

import "example.com/drawbar/units/working"

// words splits s where a line may end, as [working.Words] does. A number and
// its unit are joined by a no-break space.
func words(s string) []string {
	list := working.Words(s)
	for i, word := range list {
		list[i] = unbroken(word)
	}
	return list
}
