# For LearnedSpreadsTest.
#   Rscript learned-spreads.R > learned-spreads.csv       (R 4.2.2, Debian r-base-core 4.2.2.20221110-2)

cat("what;value\n")
# By how much a variance known from so many batches is to be wider for a normal law to have the 80 % range of Student's t.
for (freedom in c(2, 4, 9.5, 60)) cat("as wide", freedom, sprintf("%.6f", (qt(0.9, freedom) / qnorm(0.9))^2), sep = ";", fill = TRUE)

# Variance of ln(rate) at 20, 21 and 24 degrees around the mean of the three, where optimum and minimum are only known as stated, 26 and 10 with a
# maximum of 35 and a reference of 22: on a grid of +-6 by 1/2 and 1, normal with 90 % within +-2 and +-3, rising by a degree at least.
beta <- function(t, low, best, high) {
  ifelse(t > low & t < high, (high - t) / (high - best) * (pmax(t - low, 0) / (best - low))^((best - low) / (high - best)), 0)
}
grid <- expand.grid(best = 26 + seq(-6, 6, 0.5), low = 10 + -6:6)
grid <- grid[grid$low + 1 <= grid$best & grid$best + 1 <= 35 & grid$low + 1 <= 22, ]
w <- dnorm(grid$best, 26, 2 / qnorm(0.95)) * dnorm(grid$low, 10, 3 / qnorm(0.95))
logs <- sapply(c(20, 21, 24), function(t) log(beta(t, grid$low, grid$best, 35)))
logs <- logs - rowMeans(logs)
w <- w / sum(w)
each <- colSums(w * logs^2) - colSums(w * logs)^2
cat("rate variance", "stated", sprintf("%.7f", mean(each)), sep = ";", fill = TRUE)
