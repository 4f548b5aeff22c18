# What a record says of the model's 10, 50 and 90 % points, by the midpoint rule on 24 000 scores and R's own normal law, apart from the code:
#   Rscript calibration.R > calibration.csv      (R 4.2.2)
# Batch i was ready at the score y_i, seen with a normal error of sd tau; n0 = 8 imagined batches are as the model says.
z <- (seq_len(24000) - 0.5) / 2000 - 6
law <- function(q) {            # density, normal on either side of the median
  side <- ifelse(z < q[2], q[2] - q[1], q[3] - q[2])
  dnorm((z - q[2]) / side * qnorm(0.9)) / side
}
fit <- function(y, tau, w) {
  q <- qnorm(c(0.1, 0.5, 0.9))
  prior <- dnorm(z) / sum(dnorm(z))
  repeat {
    g <- law(q)
    all <- 8 * prior
    for (i in seq_along(y)) {
      p <- g * dnorm(y[i], z, tau)
      all <- all + w[i] * p / sum(p)
    }
    below <- cumsum(all) / sum(all)
    nxt <- approx(below, z + 1 / 4000, c(0.1, 0.5, 0.9), ties = "ordered")$y
    if (max(abs(nxt - q)) < 1e-9) {
      spread2 <- function(p) sum(p * z^2) / sum(p) - (sum(p * z) / sum(p))^2
      told <- sapply(y, function(each) 1 - spread2(g * dnorm(each, z, tau)) / spread2(g))
      n <- sum(w * pmax(0, told)) # the ends, so that they hold on the mean although they are known from so few
      v <- 0.1 * 0.9 / dnorm(qnorm(0.9))^2 * n / (n + 8)^2
      return((nxt[2] + c(1 + v / 2, 0, 1 + v / 2) * (nxt - nxt[2])) / qnorm(0.9))
    }
    q <- nxt
  }
}
line <- function(name, y, tau, w = rep(1, length(y)))
  cat(paste(c(name, sprintf("%.6f", fit(y, tau, w))), collapse = ";"), "\n", sep = "")
spread <- qnorm((1:12 - 0.5) / 12)
cat("case;early;middle;late\n")
line("as the model says", spread, 0.5)
line("twice as wide", 2 * spread, 0.5)
line("half as wide", 0.5 * spread, 0.3)
line("late", spread + 1, 0.5)
line("late ones far", ifelse(spread > 0, 2 * spread, spread), 0.4)
line("seen badly", 2 * spread, 2)
line("one of twelve wrong", c(spread[-12], -4), 0.3)
line("three batches", c(1.2, 1.5, 1.9), 0.3)
line("old ones count less", c(spread, spread + 2), 0.4, rep(c(0.25, 1), each = 12))
