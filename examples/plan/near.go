package plan

import (
	"slices"
	"strings"
)

// didYouMean returns `; did you mean "efficiency"?` if a word of the list is
// near, else nothing.
func didYouMean(word string, list []string) string {
	if near := nearest(word, list); near != "" {
		return "; did you mean \"" + near + "\"?"
	}
	return ""
}

// nearest returns the word of the list that is most like another: the same but
// for capitals, or one slip away, or two in a long word. It is empty if there
// is none.
func nearest(word string, list []string) (best string) {
	const long = 8
	most := 1
	if len([]rune(word)) >= long {
		most = 2
	}
	folded := []rune(strings.ToLower(word))
	// A short word is near too many others.
	const short = 3
	for _, candidate := range list {
		other := []rune(strings.ToLower(candidate))
		if min(len(folded), len(other)) < short && !slices.Equal(folded, other) {
			continue
		}
		if n := slips(folded, other); n <= most {
			best, most = candidate, n-1
		}
	}
	return best
}

// slips counts the letters to add, leave out, change or swap with the next one
// to make b of a: the optimal string alignment distance.
func slips(a, b []rune) int {
	var before []int
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i, x := range a {
		next := make([]int, len(b)+1)
		next[0] = i + 1
		for j, y := range b {
			change := row[j]
			if x != y {
				change++
			}
			next[j+1] = min(change, row[j+1]+1, next[j]+1)
			if i > 0 && j > 0 && x == b[j-1] && a[i-1] == y {
				next[j+1] = min(next[j+1], before[j-1]+1)
			}
		}
		before, row = row, next
	}
	return row[len(b)]
}
