urls: list = []
