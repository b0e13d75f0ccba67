"""What a learner touches: cards, explorers, forms. Controls come and go; the text stays."""
