package practical

func (p *Practical) Validate() Faults { return nil }
