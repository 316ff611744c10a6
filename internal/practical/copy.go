package practical

import (
	"encoding/json"
	"fmt"
)

// Copy is a practical that shares nothing with p. It fails only on what JSON
// cannot hold, such as a doubt that is no number.
func (p *Practical) Copy() (*Practical, error) {
	data, err := json.Marshal(p)
	if err != nil {
		return nil, fmt.Errorf("copy practical: %w", err)
	}
	c := new(Practical)
	if err := json.Unmarshal(data, c); err != nil {
		return nil, fmt.Errorf("copy practical: %w", err)
	}
	return c, nil
}
